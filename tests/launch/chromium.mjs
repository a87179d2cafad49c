// The browser the stories run in: one that is installed, else Debian's package where it can be had.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  process.env.CHROMIUM,
  // Debian's build without a window: the same engine, quicker to start.
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

function installed() {
  return PLACES.find((path) => path && existsSync(path));
}

/** Path of a Chromium, or null after a sentence that says what to install. */
export function chromium() {
  const found = installed();
  if (found) return found;
  const may = process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (may) {
    console.log('Installing Chromium from Debian for the browser stories (once)…');
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    for (const name of ['chromium-headless-shell', 'chromium']) {
      spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], {
        stdio: ['ignore', 'ignore', 'inherit'],
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      });
      const now = installed();
      if (now) return now;
    }
  }
  console.error(
    'The browser stories need Chromium and none was found. Install it (Debian: apt-get install chromium), or name one in the environment variable CHROMIUM.',
  );
  return null;
}

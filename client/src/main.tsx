import '@fontsource-variable/source-serif-4/opsz.css';
import '@fontsource-variable/source-serif-4/opsz-italic.css';
import '@fontsource-variable/archivo/wdth.css';
import './look/tokens.css';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { registerWorker } from './offline/register.ts';
import { ShowContext } from './sync/hooks.ts';
import { openShow } from './sync/show-session.ts';

const root = createRoot(document.getElementById('root') as HTMLElement);

registerWorker();

openShow().then(
  (show) => {
    root.render(
      <ShowContext value={show}>
        <App />
      </ShowContext>,
    );
  },
  (error: unknown) => {
    root.render(
      <main className="not-admitted">
        <h1>Enfilade</h1>
        <p>
          {error instanceof Error ? error.message : 'The server gave no answer. Nothing was lost; load the page again.'}
        </p>
      </main>,
    );
  },
);

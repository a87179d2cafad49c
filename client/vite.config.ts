import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** Lists everything the page is made of, for the service worker to keep. */
function shellList(): Plugin {
  return {
    name: 'shell-list',
    // Last: chunks that hold nothing but a style sheet are taken out of the bundle before it is written.
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const paths = Object.keys(bundle)
          .filter((name) => name !== 'service-worker.js' && !name.endsWith('.map'))
          .map((name) => `/${name}`);
        this.emitFile({ type: 'asset', fileName: 'shell.json', source: JSON.stringify(paths) });
      },
    },
  };
}

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  plugins: [react(), shellList()],
  // Two copies of yjs would not recognise each other's types.
  resolve: { dedupe: ['yjs', 'react', 'react-dom', 'konva'] },
  build: {
    target: 'es2022',
    sourcemap: false,
    chunkSizeWarningLimit: 900,
    rolldownOptions: {
      // Where a slow machine's build spends its time is nothing to who starts a show.
      checks: { pluginTimings: false },
      input: {
        index: `${import.meta.dirname}/index.html`,
        'service-worker': `${import.meta.dirname}/src/offline/service-worker.ts`,
      },
      output: {
        // The worker's scope is the folder it is served from, and its name must not change.
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});

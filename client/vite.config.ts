import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  plugins: [react()],
  // Two copies of yjs would not recognise each other's types.
  resolve: { dedupe: ['yjs', 'react', 'react-dom', 'konva'] },
  build: { target: 'es2022', sourcemap: false, chunkSizeWarningLimit: 900 },
});

/** Builds the three parts of the window into out/: main (ESM), preload (CommonJS, as its sandbox asks), renderer. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      externalizeDeps: false,
      rolldownOptions: {
        input: { electron: 'main/doors/electron.ts' },
        external: ['better-sqlite3'],
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rolldownOptions: {
        input: { preload: 'main/doors/preload.ts' },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    // One folder for both doors, wherever it is served from.
    base: './',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: 'out/renderer',
      // The page's rules allow no data: fonts or scripts.
      assetsInlineLimit: 0,
      rolldownOptions: { input: 'renderer/index.html' },
    },
  },
});

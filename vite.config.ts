import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { crewPagePlugin } from './src/crew/template/crew-page-plugin';

export default defineConfig({
  root: 'src/app',
  base: './',
  plugins: [svelte(), crewPagePlugin()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    target: 'es2023',
    rolldownOptions: {
      treeshake: {
        // The screen uses no boolean of Clipper's, only the plain ring functions beside them; the
        // package does not say that it is free of side effects, so that is said here.
        moduleSideEffects: [{ test: /clipper2-ts/, sideEffects: false }],
      },
    },
  },
  server: { fs: { allow: ['../..'] } },
});

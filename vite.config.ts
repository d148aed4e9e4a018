import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/app',
  base: './',
  plugins: [svelte()],
  worker: { format: 'es' },
  build: { outDir: '../../dist/app', emptyOutDir: true, target: 'es2023' },
  server: { fs: { allow: ['../..'] } },
});

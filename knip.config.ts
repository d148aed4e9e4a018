import type { KnipConfig } from 'knip';

/** The dead-export scan: what starts the program, what tests it, and what is used outside imports. */
const config: KnipConfig = {
  entry: [
    'src/cli/main.ts',
    'src/cli/start.ts',
    'src/cli/*.mjs',
    'src/app/main.ts',
    'tests/run-all.mjs',
    'tests/**/*.{test,proof,bench}.ts',
    'tests/bench/*.{ts,mjs}',
  ],
  project: ['src/**/*.{ts,svelte,mjs}', 'tests/**/*.{ts,mjs}'],
  ignore: ['src/base/globals.d.ts', 'tests/fixtures/impure/**'],
  // Read as files by package name, not imported: fonts. Called by npx: the checker.
  ignoreDependencies: ['@expo-google-fonts/.+', 'prettier-plugin-svelte', 'svelte-check'],
  ignoreExportsUsedInFile: true,
  includeEntryExports: false,
};

export default config;

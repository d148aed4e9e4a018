import type { KnipConfig } from 'knip';

/** The dead-export scan: what starts the program, what tests it, and what is used outside imports. */
const config: KnipConfig = {
  entry: [
    'src/cli/main.ts',
    'src/cli/start.ts',
    'src/cli/*.mjs',
    'src/crew/main.ts',
    'src/crew/template/bundle.mjs',
    'tests/**/*.{test,proof,bench}.ts',
    'tests/bench/*.{ts,mjs}',
  ],
  project: ['src/**/*.{ts,svelte,mjs}', 'tests/**/*.{ts,mjs}'],
  ignore: ['tests/fixtures/impure/**'],
  // The Debian package tool, called only where it is.
  ignoreBinaries: ['apt-get'],
  ignoreExportsUsedInFile: true,
  includeEntryExports: false,
};

export default config;

import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { defineConfig } from 'eslint/config';

/**
 * turf functions that measure on the sphere. They return wrong numbers, without an error, on planar
 * feet; the project keeps them out of planar code altogether. Planar work is done by src/geometry.
 */
const GEODESIC_TURF = [
  'along',
  'area',
  'bearing',
  'buffer',
  'circle',
  'destination',
  'distance',
  'ellipse',
  'greatCircle',
  'length',
  'lineArc',
  'lineChunk',
  'lineOffset',
  'lineSliceAlong',
  'midpoint',
  'nearestPoint',
  'nearestPointOnLine',
  'pointToLineDistance',
  'rhumbBearing',
  'rhumbDestination',
  'rhumbDistance',
  'sector',
  'transformRotate',
  'transformScale',
  'transformTranslate',
];

const planarTurfOnly = {
  'no-restricted-imports': [
    'error',
    {
      paths: [
        {
          name: '@turf/turf',
          importNames: GEODESIC_TURF,
          message: 'Geodesic: gives wrong numbers on planar feet. Use src/geometry.',
        },
      ],
      patterns: [
        {
          group: ['@turf/turf/*', '@turf/helpers', '@turf/*/*'],
          message: 'Import planar functions by name from @turf/turf.',
        },
      ],
    },
  ],
};

const noBareTolerance = {
  'no-restricted-syntax': [
    'error',
    {
      selector: 'Literal[raw=/^[0-9.]+e-/i]',
      message:
        'Tolerances live in src/geometry/tolerance.ts, with their size on the ground and why.',
    },
    {
      selector: "ImportNamespaceSpecifier[parent.source.value='@turf/turf']",
      message: 'Import planar turf functions by name, so that the geodesic ones can be refused.',
    },
  ],
};

export default defineConfig(
  {
    ignores: ['dist/', 'out/', 'node_modules/', 'tests/fixtures/impure/', 'src/base/globals.d.ts'],
  },
  js.configs.recommended,
  ts.configs.recommendedTypeChecked,
  svelte.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.browser, ...globals.node },
      parserOptions: {
        projectService: true,
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: ['.svelte'],
      },
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser } },
  },
  {
    // The linter sees the parameters of callbacks in templates as `any`; svelte-check types them.
    files: ['**/*.svelte'],
    rules: {
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  { files: ['src/**/*.ts', 'src/**/*.svelte'], rules: { ...planarTurfOnly } },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/geometry/tolerance.ts'],
    rules: noBareTolerance,
  },
  { files: ['**/*.js', '**/*.mjs'], extends: [ts.configs.disableTypeChecked] },
);

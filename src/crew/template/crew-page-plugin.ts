/** Gives the app's build the phone page: to be filled as a file, and served at `crew/`. */
import type { Plugin } from 'vite';
import type { CrewPageFiles } from './build-crew-page';
import { keptCrewPage } from './kept-crew-page';

const MODULE = 'virtual:crew-page';
const FOLDER = 'crew/';

/** What stands at `crew/`, by name. */
const servedFiles = (files: CrewPageFiles): Readonly<Record<string, [string, string]>> => ({
  'index.html': [files.served, 'text/html'],
  'sw.js': [files.worker, 'text/javascript'],
  'manifest.webmanifest': [files.manifest, 'application/manifest+json'],
  'icon.svg': [files.icon, 'image/svg+xml'],
});

export function crewPagePlugin(): Plugin {
  return {
    name: 'swathscribe-crew-page',
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    async load(id) {
      if (id !== `\0${MODULE}`) return null;
      return `export default ${JSON.stringify((await keptCrewPage()).page)};`;
    },
    async generateBundle() {
      if (this.environment.name !== 'client') return;
      for (const [name, [source]] of Object.entries(servedFiles(await keptCrewPage()))) {
        this.emitFile({ type: 'asset', fileName: FOLDER + name, source });
      }
    },
    configureServer(server) {
      server.middlewares.use(`/${FOLDER.slice(0, -1)}`, (request, response, next) => {
        void keptCrewPage().then((files) => {
          const name = (request.url ?? '/').replace(/[?#].*$/, '').slice(1) || 'index.html';
          const file = Object.hasOwn(servedFiles(files), name)
            ? servedFiles(files)[name]
            : undefined;
          if (!file) return next();
          response.setHeader('Content-Type', file[1]);
          response.end(file[0]);
        }, next);
      });
    },
  };
}

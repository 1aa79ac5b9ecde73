import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { build as buildAgain, type Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

// The page in the making asks this server, `oddside serve`, for its answers. It is asked as by a
// page of its own, since it listens to no other.
const answersFrom = process.env.ODDSIDE_ADDRESS ?? 'http://127.0.0.1:7350';

const root = import.meta.dirname;

/** By which a bench card knows whether it is of the program that answers: all it is made of. */
const buildName = nameOf(['src', 'bench.html', 'public', 'package-lock.json', 'vite.config.ts']);

function nameOf(sources: string[]): string {
  const hash = createHash('sha256');
  const read = (path: string): void => {
    for (const entry of readdirSync(join(root, path), { withFileTypes: true }).sort(byName)) {
      const way = join(path, entry.name);
      if (entry.isDirectory()) read(way);
      else hash.update(way).update(readFileSync(join(root, way)));
    }
  };
  const byName = (one: { name: string }, other: { name: string }) =>
    one.name < other.name ? -1 : 1;
  for (const source of sources) {
    if (/\.\w+$/.test(source)) hash.update(readFileSync(join(root, source)));
    else read(source);
  }
  return hash.digest('hex').slice(0, 16);
}

/**
 * What goes with the bench card: the list of its files, and the worker that keeps them on the phone.
 * The worker is built by itself, since a worker that is a module is not known to every browser.
 */
function benchFiles(): Plugin {
  let files: string[] = [];
  let outDir = '';
  return {
    name: 'bench-files',
    apply: 'build',
    configResolved: (config) => {
      outDir = config.build.outDir;
    },
    generateBundle(_, bundle) {
      const page = Object.values(bundle).find(
        (file) => file.type === 'chunk' && file.isEntry && file.name === 'bench',
      );
      const all = new Set<string>();
      const gather = (name: string): void => {
        const file = bundle[name];
        if (all.has(name) || file?.type !== 'chunk') return;
        all.add(name);
        file.viteMetadata?.importedCss.forEach((css) => all.add(css));
        file.imports.forEach(gather);
      };
      if (page) gather(page.fileName);
      files = ['/bench', '/mark.svg', ...[...all].sort().map((name) => `/${name}`)];
      const source = JSON.stringify({ build: buildName, files });
      this.emitFile({ type: 'asset', fileName: 'bench-files.json', source });
    },
    async closeBundle() {
      await buildAgain({
        configFile: false,
        root,
        publicDir: false,
        logLevel: 'warn',
        define: { __BUILD__: JSON.stringify(buildName), __FILES__: JSON.stringify(files) },
        build: {
          outDir,
          emptyOutDir: false,
          target: 'es2022',
          lib: {
            entry: join(root, 'src/bench/worker.ts'),
            formats: ['iife'],
            name: 'benchWorker',
            fileName: () => 'bench-worker.js',
          },
        },
      });
    },
  };
}

export default defineConfig({
  plugins: [svelte(), benchFiles()],
  define: { __BUILD__: JSON.stringify(buildName) },
  build: {
    target: 'es2022',
    // Everything stays a file of its own: the content policy lets nothing stand inline.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 800,
    rolldownOptions: {
      input: { index: join(root, 'index.html'), bench: join(root, 'bench.html') },
    },
  },
  server: {
    proxy: { '/api': { target: answersFrom, changeOrigin: true, headers: { origin: answersFrom } } },
  },
  test: { include: ['tests/unit/**/*.test.ts'] },
});

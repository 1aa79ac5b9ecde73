import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

// The page in the making asks this server, `oddside serve`, for its answers. It is asked as by a
// page of its own, since it listens to no other.
const answersFrom = process.env.ODDSIDE_ADDRESS ?? 'http://127.0.0.1:7350';

export default defineConfig({
  plugins: [svelte()],
  build: {
    target: 'es2022',
    // Everything stays a file of its own: the content policy lets nothing stand inline.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 800,
  },
  server: {
    proxy: { '/api': { target: answersFrom, changeOrigin: true, headers: { origin: answersFrom } } },
  },
  test: { include: ['tests/unit/**/*.test.ts'] },
});

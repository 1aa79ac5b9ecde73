// A served copy of the examples and a browser to look at it, for one file of tests.
import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const examples = fileURLToPath(new URL('../../../../../examples', import.meta.url));

/** Where pictures of the page are put, to be looked at. */
export const pictures = fileURLToPath(new URL('./pictures', import.meta.url));

/** A mesh of the examples. */
export const mesh = (name) => join(examples, 'meshes', name);

/** Serves a copy of the examples; the server is stopped and started again by `stop` and `start`. */
export async function openShop() {
  const program = process.env.ODDSIDE_BIN;
  if (!program) throw new Error('ODDSIDE_BIN has to name the program that serves the page');
  const folder = await mkdtemp(join(tmpdir(), 'page-shop-'));
  await cp(examples, folder, { recursive: true });
  await mkdir(pictures, { recursive: true });
  const shop = { folder, address: '', server: null, browser: null };
  shop.start = async (port = 0) => {
    shop.server = spawn(program, ['serve', folder, '--port', String(port)], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    shop.address = await addressFrom(shop.server);
  };
  shop.stop = () =>
    new Promise((stopped) => {
      shop.server.once('exit', stopped);
      shop.server.kill('SIGKILL');
    });
  shop.close = async () => {
    await shop.browser.close();
    await shop.stop();
    await rm(folder, { recursive: true, force: true });
  };
  await shop.start();
  shop.browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--disable-background-networking',
    ],
  });
  return shop;
}

/** The address that the server prints on its first line. */
function addressFrom(server) {
  return new Promise((found, failed) => {
    let said = '';
    server.once('exit', (code) => failed(new Error(`the server ended with ${code}: ${said}`)));
    server.stdout.on('data', (some) => {
      said += some;
      const address = /http:\/\/[\w.:]+/.exec(said)?.[0];
      if (address) found(address);
    });
  });
}

/** A page of a width; what goes wrong in it is gathered in `faults`. */
export async function openPage(shop, way = '/', width = 1440, more = {}) {
  const page = await shop.browser.newPage({ viewport: { width, height: 900 }, ...more });
  page.setDefaultTimeout(30_000);
  page.faults = [];
  page.on('pageerror', (error) => page.faults.push(error.message));
  page.on('console', (said) => {
    // A no of the server stands in the console as well; the page has to show it by itself.
    if (said.type() === 'error' && !/status of 4\d\d|ERR_CONNECTION|ERR_INCOMPLETE/.test(said.text())) {
      page.faults.push(said.text());
    }
  });
  await page.goto(shop.address + way);
  return page;
}

/** The dotted line of a name. */
export const lineOf = (page, label) =>
  page.locator('.line', { has: page.locator('.label', { hasText: label }) }).first();

// The bench card as a phone has it: over TLS from the local network, paired by the code.
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { after, before, test } from 'node:test';
import { chromium } from 'playwright-core';
import { pictures } from './shop.mjs';

const examples = fileURLToPath(new URL('../../../../../examples', import.meta.url));
const program = process.env.ODDSIDE_BIN;

let folder;
let server;
let browser;
let said = '';

before(async () => {
  folder = await mkdtemp(join(tmpdir(), 'phone-shop-'));
  await cp(examples, folder, { recursive: true });
  server = spawn(program, ['serve', folder, '--port', '0', '--lan', '127.0.0.1:0']);
  server.stdout.on('data', (some) => (said += some));
  server.stderr.on('data', (some) => (said += some));
  while (!/fingerprint/.test(said) || !/\d{4} \d{4}/.test(said)) await new Promise((on) => setTimeout(on, 50));
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-background-networking', '--ignore-certificate-errors'],
  });
});
after(async () => {
  await browser.close();
  server.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true });
});

test('a phone is paired by the code in the terminal, and put out by its name', async () => {
  const address = /https:\/\/[\d.]+:\d+/.exec(said)[0];
  const code = /\d{4} \d{4}/.exec(said)[0];
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    ignoreHTTPSErrors: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(`${address}/bench/pump-housing`);
  const print = /(?:[0-9A-F]{2}:){31}[0-9A-F]{2}/.exec(said)[0];
  assert.equal(await page.locator('code').textContent(), print);
  await page.screenshot({ path: join(pictures, 'bench-pair.png'), fullPage: true });
  await page.locator('#code').fill('00000000');
  await page.getByRole('button', { name: 'Pair' }).click();
  await page.getByRole('alert').waitFor();
  assert.match(await page.getByRole('alert').textContent(), /Tries left: 4/);
  await page.locator('#code').fill(code);
  await page.locator('#name').fill('the old one');
  await page.getByRole('button', { name: 'Pair' }).click();
  await page.waitForURL(/\/bench/);
  await page.getByRole('button', { name: /Pump housing/ }).click();
  await page.getByRole('link', { name: 'Weigh' }).waitFor();
  assert.equal(await page.evaluate(() => window.isSecureContext), true);
  assert.equal(await page.evaluate(() => document.cookie), '', 'no script reads what the phone shows');
  const phones = (what) => spawnSync(program, ['phones', ...what], { cwd: folder, encoding: 'utf8' });
  assert.match(phones(['list']).stdout, /the old one\s+20\d\d-\d\d-\d\d/);
  assert.equal(phones(['remove', 'the old one']).status, 0);
  await page.reload();
  await page.locator('[role=alert]').first().waitFor();
  assert.match(await page.locator('body').textContent(), /not paired/);
  assert.equal(phones(['remove', 'the old one']).status, 2);
  await context.close();
});

test('the sheet on the machine itself leads to the card, and shows a phone the way', async () => {
  const [, sheet] = /(http:\/\/[\d.:]+)/.exec(said);
  const phones = /https:\/\/[\d.]+:\d+/.exec(said)[0];
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(30_000);
  await page.goto(`${sheet}/job/pump-housing`);
  const squares = page.locator('.bench-card img');
  await squares.waitFor();
  assert.equal(await squares.getAttribute('alt'), `${phones}/bench/pump-housing`);
  await page.locator('.foot').screenshot({ path: join(pictures, 'bench-card-squares.png') });
  await page.getByRole('link', { name: 'Bench card' }).click();
  await page.waitForURL(`${sheet}/bench/pump-housing`);
  await page.getByRole('link', { name: 'Weigh' }).or(page.getByRole('button', { name: /Pump housing/ })).first().waitFor();
  await page.close();
});

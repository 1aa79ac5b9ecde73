// The blank sheet: a part described in words and sizes in place of a mesh.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { openPage, openShop, pictures } from './shop.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let shop;
before(async () => {
  shop = await openShop();
});
after(() => shop.close());

test('a box is described and its sheet stands', async () => {
  const page = await openPage(shop, '/');
  await page.getByRole('button', { name: 'box', exact: true }).click();
  assert.equal(await page.getByText('choose a mesh of it').isVisible(), false);
  await page.getByLabel('length', { exact: true }).fill('120 mm');
  await page.getByLabel('width', { exact: true }).fill('60 mm');
  await page.getByLabel('height, upright').fill('25 mm');
  await page.getByLabel('name of the job').fill('Door stop');
  await page.getByLabel('to be cast in').selectOption({ index: 2 });
  const began = Date.now();
  await page.getByRole('button', { name: 'Start the sheet' }).click();
  await page.waitForSelector('#block-pour');
  console.log(`# a full sheet after ${Date.now() - began} ms`);
  assert.match(page.url(), /\/job\/door-stop$/);
  const text = await readFile(join(shop.folder, 'door-stop/job.toml'), 'utf8');
  assert.match(text, /kind = "box"\nsize = \["120 mm", "60 mm", "25 mm"\]/);
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('sizes that cannot be are refused in words, and stay in their fields', async () => {
  const page = await openPage(shop, '/');
  await page.getByRole('button', { name: 'five sizes' }).click();
  const sizes = ['140 mm', '90 mm', '40 mm', '6 mm', '24 mm'];
  const fields = page.locator('.blank input.field');
  for (const [at, size] of sizes.entries()) await fields.nth(at).fill(size);
  await page.getByLabel('name of the job').fill('Thin above thick');
  await page.getByLabel('to be cast in').selectOption({ index: 2 });
  await page.getByRole('button', { name: 'Start the sheet' }).click();
  await page.locator('.refused').waitFor();
  assert.match(await page.locator('.refused').innerText(), /thinnest/);
  assert.equal(await fields.nth(4).inputValue(), '24 mm');
  await page.close();
});

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    const page = await openPage(shop, '/', width, { bypassCSP: true });
    await page.getByRole('button', { name: 'five sizes' }).click();
    await page.waitForSelector('.jobs a');
    await page.evaluate(axe);
    const found = await page.evaluate(() => window.axe.run(document));
    const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html)}`);
    assert.deepEqual(told, []);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
    await page.screenshot({ path: join(pictures, `start-${width}.png`), fullPage: true });
    await page.close();
  });
}

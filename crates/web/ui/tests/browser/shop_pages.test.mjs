// Sand, shop and melt: each a sheet of its own, reached by a link at the head of a paper.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { lineOf, openPage, openShop, pictures } from './shop.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let shop;
before(async () => {
  shop = await openShop();
});
after(() => shop.close());

const shopFile = () => readFile(join(shop.folder, 'shop.toml'), 'utf8');

test('the bench works out what is filled in', async () => {
  const page = await openPage(shop, '/');
  await page.getByRole('link', { name: 'Sand' }).click();
  await page.waitForSelector('#ask-water');
  assert.match(page.url(), /\/sand$/);
  const ask = page.locator('section', { has: page.locator('#ask-water') });
  await ask.getByLabel('wet', { exact: true }).fill('200 g');
  await ask.getByLabel('dried', { exact: true }).fill('190 g');
  await ask.getByRole('button', { name: 'Work it out' }).click();
  await ask.locator('.value').first().waitFor();
  assert.match(await ask.locator('.rows').innerText(), /5/);
  await ask.getByLabel('dried', { exact: true }).fill('210 g');
  await ask.getByRole('button', { name: 'Work it out' }).click();
  await ask.locator('.refused').waitFor();
  await page.screenshot({ path: join(pictures, 'sand.png'), fullPage: true });
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('the heap is changed where it stands', async () => {
  const page = await openPage(shop, '/sand');
  const line = lineOf(page, 'sand in the heap');
  await line.locator('.written').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('85 kg');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.written:text("85 kg")');
  assert.match(await shopFile(), /mass = "85 kg"/);
  await page.close();
});

test('what is kept for the ingot mould is typed on the sheet of the melt', async () => {
  const page = await openPage(shop, '/melt/housing-from-scrap');
  await page.waitForSelector('table');
  const weighed = await page.locator('table').first().innerText();
  await lineOf(page, 'kept for the ingot mould').locator('.written').click();
  await page.keyboard.type('30 % of poured');
  await page.keyboard.press('Enter');
  await page.waitForFunction((was) => {
    const table = document.querySelector('table');
    return table && table.innerText !== was;
  }, weighed);
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('what an advice names is reached by its link, by keyboard too', async () => {
  const page = await openPage(shop, '/job/pump-housing');
  const lead = page.getByRole('link', { name: 'Fill in: your own contraction' });
  await lead.focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement.id === 'typed-metal-contraction');
  await page.keyboard.press('Enter');
  await page.keyboard.type('1.3 %');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.written:text("1.3 %")');
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('the melt of a job is told from its sheet', async () => {
  const page = await openPage(shop, '/job/housing-from-scrap');
  await page.waitForSelector('#block-pour');
  await page.locator('.leads a').first().click();
  await page.waitForSelector('table');
  await page.screenshot({ path: join(pictures, 'melt.png'), fullPage: true });
  assert.ok((await page.locator('tbody tr').count()) > 2);
  assert.deepEqual(page.faults, []);
  await page.close();
});

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    const page = await openPage(shop, '/sand', width, { bypassCSP: true });
    for (const [way, there] of [
      ['/sand', '#ask-recipe'],
      ['/shop', '#page-furnace'],
      ['/melt/housing-from-scrap', 'table'],
    ]) {
      await page.goto(shop.address + way);
      await page.waitForSelector(there);
      await page.evaluate(axe);
      const found = await page.evaluate(() => window.axe.run(document));
      const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html)}`);
      assert.deepEqual(told, [], way);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, way);
      const name = way.split('/')[1];
      await page.screenshot({ path: join(pictures, `${name}-${width}.png`), fullPage: true });
    }
    await page.close();
  });
}

test('another language is taken up at once', async () => {
  const page = await openPage(shop, '/shop');
  await lineOf(page, 'language').locator('.written').click();
  await page.getByRole('button', { name: 'French' }).click();
  await page.waitForSelector('h1:text("Atelier")');
  await page.waitForSelector('.strip :text("Toutes les pièces")');
  assert.match(await shopFile(), /words = "fr"/);
  await page.close();
});

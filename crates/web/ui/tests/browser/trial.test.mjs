// An experiment on the page: results typed in place, one in doubt asked about, charts.
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

const results = () => readFile(join(shop.folder, 'village-heap/results.csv'), 'utf8');

test('a result is typed where it stands, and one in doubt is asked about', async () => {
  const page = await openPage(shop, '/');
  await page.getByRole('link', { name: 'Experiments' }).click();
  await page.locator('.jobs a').first().click();
  await page.waitForSelector('.charts img');
  assert.match(page.url(), /\/experiment\/village-heap$/);
  const before = await results();
  const cell = page.locator('.batch').first().locator('> div').last().locator('.cell').first();
  const stands = await cell.locator('.written').innerText();
  await cell.locator('.written').click();
  await page.keyboard.type('37.5');
  await page.keyboard.press('Enter');
  await cell.getByRole('button', { name: 'The batch was measured again' }).click();
  await cell.locator('.written').waitFor();
  assert.match(await cell.locator('.written').innerText(), /37\.5/);
  assert.notEqual(await cell.locator('.written').innerText(), stands);
  const after = await results();
  assert.ok(after.startsWith(before.trimEnd()), 'what stood there stays');
  assert.match(after, /,37\.5,again\n$/);
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('a result that cannot be sent stays in its field', async () => {
  const page = await openPage(shop, '/experiment/village-heap');
  const cell = page.locator('.batch').last().locator('> div').last().locator('.cell').first();
  await cell.locator('.written').click();
  const port = Number(new URL(shop.address).port);
  await shop.stop();
  await page.keyboard.type('41');
  await page.keyboard.press('Enter');
  await cell.locator('.said').waitFor();
  assert.equal(await cell.locator('.field').inputValue(), '41');
  await shop.start(port);
  await cell.getByRole('button', { name: 'Keep' }).click();
  await page.waitForFunction(() => !document.querySelector('.said')?.textContent.includes('Oddside'));
  await page.close();
});

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    const page = await openPage(shop, '/experiments', width, { bypassCSP: true });
    for (const [way, there] of [
      ['/experiments', '.jobs a'],
      ['/experiment/village-heap', '.charts img'],
    ]) {
      await page.goto(shop.address + way);
      await page.waitForSelector(there);
      await page.evaluate(axe);
      const found = await page.evaluate(() => window.axe.run(document));
      const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html)}`);
      assert.deepEqual(told, [], way);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, way);
    }
    await page.screenshot({ path: join(pictures, `trial-${width}.png`), fullPage: true });
    await page.close();
  });
}

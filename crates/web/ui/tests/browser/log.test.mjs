// The log on the page: a pour written from its plan, a defect traced to its causes, what it teaches.
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

test('a pour is written down in a few taps', async () => {
  const page = await openPage(shop, '/job/pump-housing');
  await page.getByRole('link', { name: 'Log' }).click();
  await page.waitForSelector('#pour-temperature');
  assert.match(page.url(), /\/log\/pump-housing$/);
  assert.match(await page.locator('#pour-temperature-planned').innerText(), /°C/);
  await page.locator('#pour-temperature').fill('700 °C');
  await page.getByRole('group', { name: /good ones/ }).getByRole('button', { name: '1' }).click();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.waitForSelector('h2:text("Pour 1")');
  assert.equal(await page.locator('.casting').count(), 2);
  const line = lineOf(page, 'time to fill it');
  await line.locator('.written').click();
  await page.keyboard.type('9 s');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.written:text("9 s")');
  await page.keyboard.press('Control+z');
  await page.waitForSelector('.written:text("9 s")', { state: 'detached' });
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('a defect is said in words and traced to its causes', async () => {
  const page = await openPage(shop, '/log');
  await page.locator('.casting button:text("What is wrong with it?")').last().click();
  const sight = page.locator('.casting .sight');
  await sight.getByRole('button', { name: 'round holes', exact: true }).click();
  await sight.getByRole('button', { name: 'on top' }).click();
  await sight.getByRole('button', { name: 'What may it come from?' }).click();
  await sight.locator('.slip').waitFor();
  // The more is said, the more is told.
  await sight.getByRole('button', { name: 'round holes', exact: true }).click();
  await sight.getByRole('button', { name: 'on top' }).click();
  await sight.getByRole('button', { name: 'halves that do not meet' }).click();
  await sight.getByRole('button', { name: 'on the joint' }).click();
  await sight.getByRole('button', { name: 'all', exact: true }).click();
  await sight.getByRole('button', { name: 'What may it come from?' }).click();
  await sight.locator('.slip .value').first().waitFor();
  await page.screenshot({ path: join(pictures, 'diagnosis.png'), fullPage: true });
  await sight.getByRole('button', { name: 'Write it down' }).click();
  await page.waitForSelector('.casting .sentences li:text("halves that do not meet")');
  assert.deepEqual(page.faults, []);
  await page.close();
});

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    const page = await openPage(shop, '/log', width, { bypassCSP: true });
    await page.waitForSelector('.casting');
    await page.waitForSelector('.charts img');
    await page.locator('summary').first().click();
    await page.locator('.casting button:text("What is wrong with it?")').first().click();
    await page.evaluate(axe);
    const found = await page.evaluate(() => window.axe.run(document));
    const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html)}`);
    assert.deepEqual(told, []);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width);
    await page.screenshot({ path: join(pictures, `log-${width}.png`), fullPage: true });
    await page.close();
  });
}

test('by keyboard alone something wrong is traced', async () => {
  const page = await openPage(shop, '/log');
  await page.waitForSelector('#wrong-look');
  await page.locator('[aria-labelledby="wrong-look"] .choice').first().focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'What may it come from?' }).last().focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector('.part > .sight .slip');
  await page.close();
});

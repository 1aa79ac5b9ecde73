// A class planned from a job, the pupil's sheet with its blanks, and the words of the trade.
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

test('a class is planned from a job, and its papers are printed', async () => {
  const page = await openPage(shop, '/job/pump-housing');
  await page.waitForSelector('#block-pour');
  await page.getByRole('link', { name: 'Lesson' }).click();
  await page.waitForSelector('#tasks');
  assert.match(page.url(), /\/lesson\/pump-housing$/);
  await page.waitForFunction(() => document.querySelectorAll('.tasks > li').length > 5);
  await page.getByLabel('pupils, a casting for each').fill('8');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.steps li');
  assert.match(await page.locator('.rows').innerText(), /moulds\s+4/);
  for (const name of ['Plan for the class', "Pupil's sheet", "Answers to the pupil's sheet"]) {
    const link = page.getByRole('link', { name: new RegExp(`^A4\\W+${name}$`) });
    const answer = await page.request.get(shop.address + (await link.getAttribute('href')));
    assert.equal(answer.headers()['content-type'], 'application/pdf', name);
  }
  await page.getByLabel('grown-ups at the fire').fill('1');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.refused');
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('a word of the trade is found by keyboard from its figure, and sought', async () => {
  const page = await openPage(shop, '/job/pump-housing');
  await page.waitForSelector('#block-pour');
  await page.getByRole('button', { name: /^why\W+Sand ready$/ }).focus();
  await page.keyboard.press('Enter');
  const term = page.locator('.slip .terms a').first();
  await term.waitFor();
  assert.equal(await term.innerText(), 'flask');
  await term.focus();
  await page.keyboard.press('Enter');
  await page.waitForSelector('#sought');
  assert.match(page.url(), /\/glossary\/flask$/);
  // The entry comes after the page.
  await page.waitForFunction(() => document.querySelectorAll('.terms dt').length === 1);
  await page.getByRole('searchbox').fill('');
  await page.waitForFunction(() => document.querySelectorAll('.terms dt').length > 50);
  await page.getByRole('searchbox').fill('colada');
  await page.waitForFunction(() => document.querySelectorAll('.terms dt').length < 10);
  await page.getByRole('searchbox').fill('zzzz');
  await page.waitForSelector('text=No entry has this word.');
  await page.goto(`${shop.address}/job/pump-housing`);
  await page.waitForSelector('#block-pour');
  await page.locator('.terms-of-sheet summary').focus();
  await page.keyboard.press('Enter');
  await page.locator('.terms-of-sheet dt', { hasText: 'sprue' }).waitFor();
  assert.deepEqual(page.faults, []);
  await page.close();
});

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    const page = await openPage(shop, '/glossary', width, { bypassCSP: true });
    await page.waitForSelector('.terms dt');
    await checked(page, width, `glossary-${width}`);
    await page.goto(`${shop.address}/lesson/pump-housing`);
    await page.getByLabel('pupils, a casting for each').fill('12');
    await page.getByRole('button', { name: 'Lay out the lessons' }).click();
    await page.waitForSelector('.steps li');
    await checked(page, width, `lesson-${width}`);
    await page.goto(`${shop.address}/job/pump-housing`);
    await page.locator('.terms-of-sheet summary').click();
    await page.waitForSelector('.terms-of-sheet dt');
    await page.locator('.asks').nth(2).click();
    await page.waitForSelector('.slip .terms');
    await page.waitForSelector('.bench-card');
    await checked(page, width, `words-${width}`);
    await page.close();
  });
}

async function checked(page, width, name) {
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run(document));
  const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html)}`);
  assert.deepEqual(told, [], name);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, name);
  await page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
}

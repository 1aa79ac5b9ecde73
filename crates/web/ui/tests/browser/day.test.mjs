// A founder's way through the page, from a mesh to a changed sheet, against the program itself.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { lineOf, mesh, openPage, openShop, pictures } from './shop.mjs';

let shop;
let page;
before(async () => {
  shop = await openShop();
  page = await openPage(shop);
});
after(() => shop.close());

const sheetOf = (name) => `/job/${encodeURIComponent(name)}`;
const jobFile = (job) => readFile(join(shop.folder, job, 'job.toml'), 'utf8');

test('a mesh becomes a sheet', async () => {
  await page.screenshot({ path: join(pictures, 'start.png') });
  await page.locator('input[type=file]').setInputFiles(mesh('angle_bracket.stl'));
  assert.equal(await page.getByLabel('name of the job').inputValue(), 'angle bracket');
  await page.getByLabel('to be cast in').selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Start the sheet' }).click();
  await page.waitForSelector('#block-pour');
  assert.match(page.url(), /\/job\/angle-bracket$/);
  assert.match(await page.title(), /angle bracket/);
  assert.ok((await page.locator('.row').count()) > 10);
});

test('a figure is changed where it stands, and what follows is marked', async () => {
  const line = lineOf(page, 'castings in one mould');
  await line.locator('.written').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('2');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.row.changed');
  assert.match(await line.locator('.written').innerText(), /2/);
  assert.match(await jobFile('angle-bracket'), /count = 2/);
  assert.match(await page.locator('.heard').innerText(), /changed/);
  // The place of the cursor is not lost.
  assert.ok(await line.locator('.written').evaluate((one) => one === document.activeElement));
  await page.screenshot({ path: join(pictures, 'changed.png') });
});

test('it is taken back and done again, by button and by keys', async () => {
  const written = lineOf(page, 'castings in one mould').locator('.written');
  const before = await written.innerText();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForSelector('button:text("Redo"):not([disabled])');
  assert.notEqual(await written.innerText(), before);
  await page.keyboard.press('Control+Shift+Z');
  await page.waitForSelector('button:text("Redo")[disabled]');
  await page.waitForSelector('button:text("Undo"):not([disabled])');
  assert.equal(await written.innerText(), before);
  await page.keyboard.press('Control+z');
  await page.waitForSelector('button:text("Redo"):not([disabled])');
  assert.doesNotMatch(await jobFile('angle-bracket'), /count = 2/);
});

test('what cannot be is told beside the field, and stays in it', async () => {
  const line = lineOf(page, 'castings in one mould');
  await line.locator('.written').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('several');
  await page.keyboard.press('Enter');
  const told = line.getByRole('alert');
  await told.waitFor();
  assert.match(await told.innerText(), /whole number/);
  assert.equal(await line.locator('input').inputValue(), 'several');
  await page.keyboard.press('Escape');
  assert.equal(await line.locator('input').count(), 0);
});

test('a figure says why', async () => {
  const row = page.locator('.row', { has: page.locator('.asks') }).first();
  await row.locator('.asks').click();
  const slip = row.locator('.slip');
  await slip.locator('.formula').first().waitFor();
  assert.match(await slip.innerText(), /Formula/);
  assert.match(await slip.innerText(), /Sources/);
  await slip.screenshot({ path: join(pictures, 'why.png') });
  await slip.getByRole('button', { name: 'Close' }).click();
  assert.equal(await row.locator('.slip').count(), 0);
});

test('two windows that change one thing are asked which is to stand', async () => {
  const other = await openPage(shop, sheetOf('angle-bracket'));
  await other.waitForSelector('#block-pour');
  await typeDate(page, '3 May 2026', false);
  await typeDate(other, '4 May 2026', true);
  await page.keyboard.press('Enter');
  const slip = page.getByRole('alertdialog');
  await slip.waitFor();
  const text = await slip.innerText();
  assert.match(text, /3 May 2026/);
  assert.match(text, /4 May 2026/);
  await page.screenshot({ path: join(pictures, 'merge.png') });
  assert.match(await jobFile('angle-bracket'), /4 May 2026/);
  await slip.getByRole('button', { name: 'Put mine' }).click();
  await slip.waitFor({ state: 'detached' });
  await page.waitForSelector('.written:text("3 May 2026")');
  assert.match(await jobFile('angle-bracket'), /3 May 2026/);
  assert.deepEqual(other.faults, []);
  await other.close();
});

test('while the server is gone nothing typed is lost', async () => {
  const port = new URL(shop.address).port;
  await shop.stop();
  await typeDate(page, '5 May 2026', true, false);
  await page.waitForSelector('.gone');
  await page.screenshot({ path: join(pictures, 'gone.png') });
  await shop.start(port);
  await page.waitForSelector('.gone', { state: 'detached' });
  await page.waitForSelector('.written:text("5 May 2026")');
  assert.match(await jobFile('angle-bracket'), /5 May 2026/);
});

test('a mesh without a unit is shown to scale in each, and one is chosen', async () => {
  const unsure = await openPage(shop);
  await unsure.locator('input[type=file]').setInputFiles(mesh('motor_housing_metres.stl'));
  await unsure.getByLabel('to be cast in').selectOption({ index: 1 });
  await unsure.getByRole('button', { name: 'Start the sheet' }).click();
  const metres = unsure.locator('.unit', { has: unsure.locator('b:text-is("m")') });
  await metres.waitFor();
  await unsure.screenshot({ path: join(pictures, 'unit.png'), fullPage: true });
  // Its longest side is 0.11 of its own units.
  assert.match(await metres.innerText(), /110 mm/);
  await metres.click();
  await unsure.waitForSelector('#block-pour');
  assert.match(await jobFile('motor-housing-metres'), /unit = "m"/);
  assert.deepEqual(unsure.faults, []);
  await unsure.close();
});

test('a name that is taken, and a file that is no mesh, are told on the blank sheet', async () => {
  const again = await openPage(shop);
  await again.locator('input[type=file]').setInputFiles(mesh('angle_bracket.stl'));
  await again.getByLabel('to be cast in').selectOption({ index: 1 });
  await again.getByRole('button', { name: 'Start the sheet' }).click();
  await again.getByRole('alert').waitFor();
  assert.equal(await again.getByLabel('name of the job').inputValue(), 'angle bracket');
  const note = { name: 'part.stl', mimeType: 'text/plain', buffer: Buffer.from('no mesh') };
  await again.locator('input[type=file]').setInputFiles(note);
  await again.getByLabel('name of the job').fill('another');
  await again.getByRole('button', { name: 'Start the sheet' }).click();
  await again.getByRole('alert').waitFor();
  assert.equal(new URL(again.url()).pathname, '/');
  await again.close();
});

test('a job that is not there is told', async () => {
  const lost = await openPage(shop, '/job/nowhere');
  await lost.getByRole('alert').waitFor();
  assert.match(await lost.getByRole('alert').innerText(), /nowhere/);
  await lost.close();
});

test('nothing went wrong behind the page', () => assert.deepEqual(page.faults, []));

async function typeDate(on, date, keep, arrives = true) {
  const line = lineOf(on, 'day of the pour');
  await line.locator('.written').click();
  await on.keyboard.press('Control+A');
  await on.keyboard.type(date);
  if (keep) await on.keyboard.press('Enter');
  if (keep && arrives) await on.waitForSelector(`.written:text("${date}")`);
}

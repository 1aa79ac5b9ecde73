// The mould in three dimensions, and what is left where a browser has none.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { balls } from './balls.mjs';
import { openPage, openShop, pictures } from './shop.mjs';

const JOB = '/job/pump-housing';

let shop;
let page;
before(async () => {
  shop = await openShop();
  page = await openPage(shop, JOB);
});
after(() => shop.close());

test('three.js comes only when the mould is looked at', async () => {
  const entries = () =>
    page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map(({ name, decodedBodySize }) => ({ name, bytes: decodedBodySize })),
    );
  const loaded = async () => (await entries()).map(({ name }) => name);
  await page.waitForSelector('#block-pour');
  assert.ok(!(await loaded()).some((name) => /scene-/.test(name)));
  await page.locator('#drawing').scrollIntoViewIfNeeded();
  await page.waitForSelector('.view.drawn');
  assert.ok((await loaded()).some((name) => /scene-/.test(name)));
  // The page itself, all of it, as large as it is unpacked.
  const assets = (await entries()).filter(({ name }) => /assets\//.test(name));
  const bytes = assets.reduce((sum, one) => sum + one.bytes, 0);
  assert.ok(assets.length >= 3 && bytes > 100_000 && bytes < 1_500_000, `${bytes} bytes`);
});

test('it draws the mould cut open: sand in greys, metal in one warm tone', async () => {
  const tones = await pixels();
  await page.locator('.drawings').first().screenshot({ path: join(pictures, 'cut.png') });
  assert.ok(tones.warm > 500, `warm: ${tones.warm}`);
  assert.ok(tones.grey > 5000, `grey: ${tones.grey}`);
  assert.ok(tones.white > 5000, `white: ${tones.white}`);
});

test('whole it shows sand alone, and taken apart the metal again', async () => {
  await page.locator('#cut').fill('0');
  const whole = await pixels();
  await page.locator('#apart').fill('1');
  const apart = await pixels();
  await page.locator('.view').screenshot({ path: join(pictures, 'apart.png') });
  assert.ok(whole.warm < apart.warm, `${whole.warm} against ${apart.warm}`);
  assert.ok(apart.warm > 500, `warm: ${apart.warm}`);
});

test('a piece under the pointer is named', async () => {
  await page.locator('#apart').fill('0');
  const canvas = page.locator('.view canvas');
  await canvas.hover();
  await page.waitForFunction(() => /cope|drag/i.test(document.querySelector('.named').innerText));
});

test('keys turn it, and Home puts it back', async () => {
  const canvas = page.locator('.view canvas');
  const stood = await canvas.screenshot();
  await canvas.focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('+');
  await settle();
  assert.notDeepEqual(await canvas.screenshot(), stood);
  await page.keyboard.press('Home');
  await settle();
  assert.deepEqual(await canvas.screenshot(), stood);
});

test('the picture is kept as PNG', async () => {
  const [kept] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the picture' }).click(),
  ]);
  assert.match(kept.suggestedFilename(), /\.png$/);
});

test('a mould of 300,000 facets is drawn, and it is told how fast', async (here) => {
  const big = await openPage(shop);
  await big.route('**/solids', (route) => route.fulfill({ body: balls(300_000) }));
  await big.goto(shop.address + JOB);
  await big.waitForSelector('#block-pour');
  const answered = big.waitForResponse('**/solids');
  await big.locator('#drawing').scrollIntoViewIfNeeded();
  await answered;
  const begun = Date.now();
  await big.waitForSelector('.view.drawn');
  // The picture itself is there only after the frame that it was drawn in.
  await big.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
  const took = Date.now() - begun;
  await big.locator('.view').screenshot({ path: join(pictures, 'big.png') });
  here.diagnostic(`300,000 facets in ${took} ms`);
  await big.close();
});

test('without WebGL the flat drawing stays, and a line says so', async () => {
  const flat = await shop.browser.newPage();
  await flat.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await flat.goto(shop.address + JOB);
  await flat.waitForSelector('#block-pour');
  await flat.locator('#drawing').scrollIntoViewIfNeeded();
  await flat.waitForSelector('text=This browser draws no solids');
  await flat.waitForSelector('.flat img');
  const wide = await flat.locator('.flat img').evaluate((image) => image.naturalWidth);
  assert.ok(wide > 0);
  await flat.close();
});

test('nothing went wrong behind the page', () => assert.deepEqual(page.faults, []));

const settle = () => page.waitForTimeout(300);

/** How many pixels of the picture are white, grey and warm. */
async function pixels() {
  await settle();
  const bytes = (await page.locator('.view canvas').screenshot()).toString('base64');
  return page.evaluate(async (shot) => {
    const image = new Image();
    image.src = `data:image/png;base64,${shot}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext('2d');
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    const count = { white: 0, grey: 0, warm: 0 };
    for (let at = 0; at < data.length; at += 4) {
      const [red, green, blue] = [data[at], data[at + 1], data[at + 2]];
      if (red - blue > 50) count.warm += 1;
      else if (red > 250 && green > 250) count.white += 1;
      else if (red > 60) count.grey += 1;
    }
    return count;
  }, bytes);
}

// Maps over the drawing: read under the pointer and by keys, in print without colour.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { openPage, openShop, pictures } from './shop.mjs';

const JOB = '/job/pump-housing';

let shop;
let page;
before(async () => {
  shop = await openShop();
  page = await openPage(shop, JOB);
  await page.waitForSelector('#block-pour');
  await page.locator('#drawing').scrollIntoViewIfNeeded();
  await page.waitForSelector('.view.drawn');
});
after(() => shop.close());

for (const map of ['wall', 'draught', 'undercut', 'modulus']) {
  test(`the map of ${map} is drawn with its legend and its numbers`, async () => {
    await page.locator('.maps').getByRole('button', { name: map, exact: true }).click();
    await page.waitForSelector('.picture[aria-busy=true]', { state: 'detached' });
    await page.waitForSelector('.legend');
    await page.waitForSelector('.numbers', { state: 'attached' });
    await page.locator('.view').screenshot({ path: join(pictures, `map-${map}.png`) });
    const ends = await page.locator('.legend .end').allInnerTexts();
    assert.ok(ends.length >= 2 && /mm|°|%/.test(ends.at(-1)), String(ends));
    if (map === 'undercut') return;
    assert.ok((await page.locator('.numbers span').count()) > 0);
  });
}

test('the value under the pointer is told, and the one under the cross', async () => {
  const canvas = page.locator('.view canvas');
  const { width, height } = await canvas.boundingBox();
  // On the cut wall at the left of the picture.
  await canvas.hover({ position: { x: 0.23 * width, y: 0.5 * height } });
  await page.waitForFunction(() => /\d.* mm/.test(document.querySelector('.named').innerText));
  await page.mouse.move(5, 5);
  await canvas.focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.waitForSelector('.cross');
  const told = () => page.locator('.named').innerText();
  assert.match(await told(), /\d.* mm/);
  await page.locator('.view').screenshot({ path: join(pictures, 'map-cross.png') });
});

test('tones go from light to dark without a turn, and neighbours differ in grey', async () => {
  const greys = await page.locator('.legend .tone').evaluateAll((all) =>
    all.map((one) => {
      const [red, green, blue] = getComputedStyle(one).backgroundColor.match(/\d+/g).map(Number);
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    }),
  );
  assert.ok(greys.length >= 3);
  for (let at = 1; at < greys.length; at += 1) {
    assert.ok(greys[at - 1] - greys[at] > 8, String(greys));
  }
});

test('the picture is kept with its numbers and its legend', async () => {
  const [kept] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the picture' }).click(),
  ]);
  await kept.saveAs(join(pictures, 'map-kept.png'));
});

test('the mould comes back', async () => {
  await page.locator('.maps').getByRole('button', { name: 'the mould' }).click();
  await page.waitForSelector('.legend', { state: 'detached' });
  await page.locator('.view canvas').hover();
  await page.waitForFunction(() => /cope|drag/i.test(document.querySelector('.named').innerText));
});

test('on a narrow screen nothing of a map is cut off', async () => {
  const narrow = await openPage(shop, JOB, 360);
  await narrow.waitForSelector('#block-pour');
  await narrow.locator('#drawing').scrollIntoViewIfNeeded();
  await narrow.waitForSelector('.view.drawn');
  await narrow.locator('.maps').getByRole('button', { name: 'wall', exact: true }).click();
  await narrow.waitForSelector('.legend');
  await narrow.waitForSelector('.numbers', { state: 'attached' });
  await narrow.locator('.view').screenshot({ path: join(pictures, 'map-360.png') });
  assert.equal(await narrow.evaluate(() => document.documentElement.scrollWidth), 360);
  await narrow.close();
});

test('nothing went wrong behind the page', () => assert.deepEqual(page.faults, []));

// Gates and feeders moved on the plan, the pattern drawn out of the sand, a freezing followed.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { openPage, openShop, pictures } from './shop.mjs';

const JOB = 'vise-jaws';

let shop;
let page;
before(async () => {
  shop = await openShop();
  page = await openPage(shop, `/job/${JOB}`);
  // A freezing on wide cells: what is tried here is the way to it.
  await page.route('**/freezing', (route) =>
    route.request().method() === 'POST'
      ? route.continue({ postData: JSON.stringify({ cells: 20000 }) })
      : route.continue(),
  );
  await page.waitForSelector('#block-pour');
  await page.locator('#drawing').scrollIntoViewIfNeeded();
  await page.waitForSelector('.view.drawn');
});
after(() => shop.close());

const jobFile = () => readFile(join(shop.folder, JOB, 'job.toml'), 'utf8');
const gates = () => page.locator('.handle:not(.feeder)');
const placed = async (handle) => /(\d+), (\d+) mm/.exec(await handle.getAttribute('aria-label'));

test('a gate is dragged along the joint, the figures follow, and undo puts it back', async () => {
  const handle = gates().first();
  const [, x, y] = await placed(handle);
  const box = await handle.boundingBox();
  const from = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move(from[0] + 3, from[1], { steps: 3 });
  await page.locator('.flat-drawing').screenshot({ path: join(pictures, 'drag.png') });
  assert.match(await page.locator('.where').innerText(), /mm/);
  await page.mouse.up();
  await page.waitForSelector('button:text("Undo"):not([disabled])');
  assert.match(await jobFile(), /gates = \["/);
  await page.waitForFunction(
    (old) => !document.querySelector('.handle:not(.feeder)').ariaLabel.includes(old),
    `${x}, ${y} mm`,
  );
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForSelector('button:text("Redo"):not([disabled])');
  assert.doesNotMatch(await jobFile(), /gates/);
  await page.waitForSelector(`.handle[aria-label$="${x}, ${y} mm"]`);
});

test('by the arrow keys it moves a millimetre at a time', async () => {
  const handle = gates().first();
  await page.waitForFunction(() => document.querySelector('.handle'));
  const [, x] = await placed(handle);
  await handle.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  const [, now] = await placed(handle);
  assert.equal(Number(now), Number(x) + 2);
  await page.waitForSelector('button:text("Undo"):not([disabled])');
  assert.match(await jobFile(), new RegExp(`"${now}, `));
  // The change is on its way; then the drawing of it.
  await page.waitForTimeout(300);
  await page.waitForSelector('.flat-drawing[aria-busy=true]', { state: 'detached' });
});

test('a place that cannot be is told, and the gate goes back', async () => {
  await page.route('**/typed', (route) =>
    route.fulfill({
      status: 422,
      json: { message: 'the gate lies outside of the flask', hint: null, now: null },
    }),
  );
  const before = await jobFile();
  const handle = gates().first();
  const [stood] = await placed(handle);
  await handle.focus();
  await page.keyboard.press('ArrowUp');
  await page.waitForSelector('.where .said');
  assert.match(await page.locator('.where').innerText(), /outside of the flask/);
  assert.equal((await placed(handle))[0], stood);
  assert.equal(await jobFile(), before);
  await page.unroute('**/typed');
});

test('the pattern is drawn out of the sand, by slider and moving', async () => {
  const canvas = page.locator('.view canvas');
  const shut = await canvas.screenshot();
  await page.locator('#out').fill('1');
  await page.waitForTimeout(300);
  assert.notDeepEqual(await canvas.screenshot(), shut);
  await page.locator('.view').screenshot({ path: join(pictures, 'drawn-out.png') });
  await page.locator('#out').fill('0');
  await page.getByRole('button', { name: 'Show it move' }).click();
  await page.waitForFunction(() => Number(document.querySelector('#out').value) > 0.1);
  await page.getByRole('button', { name: 'Hold it' }).click();
  await page.locator('#out').fill('0');
});

test('whoever wants no motion has the slider alone', async () => {
  const still = await openPage(shop, `/job/${JOB}`, 1440, { reducedMotion: 'reduce' });
  await still.waitForSelector('#block-pour');
  await still.locator('#drawing').scrollIntoViewIfNeeded();
  await still.waitForSelector('.view.drawn');
  assert.equal(await still.locator('#out').count(), 1);
  assert.equal(await still.getByRole('button', { name: 'Show it move' }).count(), 0);
  await still.close();
});

test('a freezing is followed from the page and taken up by the sheet', async () => {
  await page.getByRole('button', { name: 'Follow the freezing' }).click();
  await page.waitForSelector('.run');
  await page.locator('[aria-labelledby=freezing]').screenshot({
    path: join(pictures, 'freezing-under-way.png'),
  });
  await page.waitForSelector('.run:has-text("done")', { timeout: 120_000 });
  await page.waitForSelector('img.section');
  await page.waitForFunction(() => document.querySelector('img.section').naturalWidth > 0);
  await page.locator('[aria-labelledby=freezing]').screenshot({
    path: join(pictures, 'freezing-done.png'),
  });
  const findings = JSON.parse(
    await readFile(join(shop.folder, JOB, 'freeze', 'findings.json'), 'utf8'),
  );
  assert.ok(findings.castings_s.length === 3);
  // The list of longer work shows it on the first page too.
  const start = await openPage(shop, '/');
  await start.waitForSelector('#runs');
  await start.close();
});

test('the map of the freezing lies on the face of the cut', async () => {
  await page.locator('.maps').getByRole('button', { name: 'freezing', exact: true }).click();
  await page.waitForSelector('.legend');
  await page.waitForSelector('.numbers span', { state: 'attached' });
  await page.locator('.view').screenshot({ path: join(pictures, 'map-freezing.png') });
  assert.match(await page.locator('.legend .last').innerText(), /min|s/);
});

test('nothing went wrong behind the page', () => assert.deepEqual(page.faults, []));

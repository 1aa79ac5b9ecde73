// The bench card: with the server, without it, and back, with nothing lost; by keys alone; for gloves.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, afterEach, before, test } from 'node:test';
import { openPage, openShop, pictures } from './shop.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const CARD = '/bench/pump-housing';

/** 14 mm and 4 mm as a page counts them, at 96 to the inch. */
const FINGER = (14 / 25.4) * 96;
const GAP = (4 / 25.4) * 96;

let shop;
before(async () => {
  shop = await openShop();
});
after(() => shop.close());
// A test that stopped the server in vain leaves the others one.
afterEach(async () => {
  if (shop.server.exitCode !== null || shop.server.signalCode !== null) await shop.start();
});

/** What the log holds of a table. */
function logged(table) {
  const asked = ['log', '--log', join(shop.folder, 'log.sqlite'), 'list', table, '--last', '99', '--json'];
  const said = spawnSync(process.env.ODDSIDE_BIN, asked, { encoding: 'utf8' });
  return said.status === 0 ? JSON.parse(said.stdout) : [];
}

/** A page of its own, as another phone would have it. */
async function openCard(way = CARD, width = 360) {
  const context = await shop.browser.newContext({
    viewport: { width, height: 740 },
    hasTouch: true,
    bypassCSP: false,
  });
  const page = await openPage({ ...shop, browser: context }, way, width);
  // The plan is here, and what can be done without it too.
  await page.locator('footer').waitFor();
  if (!way.includes('#')) await page.locator('h1', { hasText: 'Pump housing' }).waitFor();
  return { page, context };
}

/** Waits until the page would open without a server. */
async function keptOnPhone(page) {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) await new Promise((on) => setTimeout(on, 50));
  });
}

/** Presses keys of the keypad, then confirms. */
async function typeIn(page, digits) {
  for (const digit of digits) await page.locator('.keys .key', { hasText: digit }).first().click();
  await page.locator('.big.dark').click();
}

/** Presses for sending where something is still to be sent: the card sends by itself now and then. */
async function sendNow(page) {
  await page.getByRole('button', { name: 'Send now' }).evaluate((button) => button.click());
}

async function readingOfMoisture(page, wet, dry) {
  await page.goto(`${shop.address}${CARD}#test`);
  await page.getByRole('button', { name: /^moisture/ }).click();
  await page.locator('h2', { hasText: /^wet$/ }).waitFor();
  await typeIn(page, wet);
  await page.locator('h2', { hasText: /^dry$/ }).waitFor();
  await typeIn(page, dry);
  await page.locator('.told', { hasText: 'Kept:' }).waitFor();
}

async function tickAll(page) {
  await page.goto(`${shop.address}${CARD}#ready`);
  const ticks = page.locator('.tick');
  await ticks.nth(9).waitFor();
  for (let at = 0; at < 10; at += 1) {
    assert.equal(await page.getByRole('link', { name: 'Pour' }).count(), 0, `${at} ticked`);
    await ticks.nth(at).click();
    await page.locator('p[role=status]', { hasText: `${at + 1} of 10` }).waitFor();
  }
}

test('a card opens without a server, keeps what is written, and sends it when the server is back', async () => {
  const { page, context } = await openCard();
  await keptOnPhone(page);
  await readingOfMoisture(page, '200', '190');
  await page.locator('footer', { hasText: 'kept here: 1, sent: 0' }).waitFor();
  const port = Number(new URL(shop.address).port);
  await shop.stop();
  await page.reload();
  await page.locator('footer', { hasText: 'does not answer' }).waitFor();
  await page.locator('footer', { hasText: 'kept here: 1, sent: 0' }).waitFor();
  // The last plan is there, and the pour runs.
  await readingOfMoisture(page, '210', '200');
  await tickAll(page);
  await page.getByRole('link', { name: 'Pour' }).click();
  await page.waitForSelector('.onward');
  await page.screenshot({ path: join(pictures, 'bench-offline.png') });
  await page.goto(`${shop.address}${CARD}#heap`);
  await page.getByRole('button', { name: 'Send now' }).click();
  await page.locator('footer', { hasText: 'kept here: 2, sent: 0' }).waitFor();
  await shop.start(port);
  await sendNow(page);
  await page.locator('footer', { hasText: 'kept here: 0, sent: 2' }).waitFor();
  const values = logged('sand_tests').map((one) => one.value).sort();
  assert.deepEqual(values.map((value) => Math.round(value * 100)), [476, 500]);
  assert.deepEqual(page.faults, []);
  await context.close();
});

test('a server killed in the middle of sending loses nothing and writes nothing twice', async () => {
  const before = logged('sand_tests').length;
  const { page, context } = await openCard();
  await keptOnPhone(page);
  for (const dry of ['181', '182', '183']) await readingOfMoisture(page, '200', dry);
  const port = Number(new URL(shop.address).port);
  // The log has written, and the answer never comes.
  const killed = new Promise((done) => {
    void page.route('**/api/v1/entries', async (route) => {
      await route.fetch();
      await shop.stop();
      await route.abort();
      done();
    });
  });
  await page.getByRole('button', { name: 'Send now' }).click();
  await killed;
  await page.locator('footer', { hasText: 'kept here: 3, sent: 0' }).waitFor();
  assert.equal(logged('sand_tests').length, before + 3);
  await page.unroute('**/api/v1/entries');
  await shop.start(port);
  await sendNow(page);
  await page.locator('footer', { hasText: 'kept here: 0, sent: 3' }).waitFor();
  assert.equal(logged('sand_tests').length, before + 3);
  await context.close();
});

test('a network that goes away and comes back is noticed by the card itself', async () => {
  const { page, context } = await openCard();
  await keptOnPhone(page);
  await context.setOffline(true);
  await readingOfMoisture(page, '200', '191');
  await page.getByRole('button', { name: 'Send now' }).click();
  await page.locator('footer', { hasText: 'kept here: 1' }).waitFor();
  await context.setOffline(false);
  await page.locator('footer', { hasText: 'sent: 1' }).waitFor();
  await context.close();
});

test('the last entry is undone, and never after it was sent', async () => {
  const { page, context } = await openCard();
  const undo = page.getByRole('button', { name: 'Undo the last' });
  assert.ok(await undo.isDisabled());
  await readingOfMoisture(page, '200', '150');
  await undo.click();
  await page.locator('footer', { hasText: 'kept here: 0, sent: 0' }).waitFor();
  await readingOfMoisture(page, '200', '192');
  await sendNow(page);
  await page.locator('footer', { hasText: 'sent: 1' }).waitFor();
  assert.ok(await undo.isDisabled());
  assert.ok(!logged('sand_tests').some((one) => Math.round(one.value) === 25));
  await context.close();
});

test('no pour without the ten points, by no address either', async () => {
  const { page, context } = await openCard(`${CARD}#pour`);
  await page.waitForURL(/#ready$/);
  await tickAll(page);
  await page.locator('.tick').nth(4).click();
  await page.locator('p[role=status]', { hasText: '9 of 10' }).waitFor();
  assert.equal(await page.getByRole('link', { name: 'Pour' }).count(), 0);
  await context.close();
});

test('a pour by one key, and six taps that write it down', async () => {
  const { page, context } = await openCard();
  await page.addInitScript(() => {
    window.told = { shaken: 0, tones: 0, locks: 0 };
    navigator.vibrate = () => (window.told.shaken += 1) > 0;
    const start = OscillatorNode.prototype.start;
    OscillatorNode.prototype.start = function (at) {
      window.told.tones += 1;
      return start.call(this, at);
    };
    const lock = { request: async () => ({ release: async () => (window.told.locks -= 1) }) };
    Object.defineProperty(navigator, 'wakeLock', {
      value: { request: async (kind) => ((window.told.locks += 1), lock.request(kind)) },
    });
  });
  await page.reload();
  await tickAll(page);
  await page.screenshot({ path: join(pictures, 'bench-ready.png'), fullPage: true });
  await page.getByRole('link', { name: 'Pour' }).click();
  await page.waitForSelector('.onward');
  const heading = page.locator('#step');
  const steps = [];
  for (const picture of ['red-lines', 'aloud', 'melt', 'cope', 'metal']) {
    steps.push(await heading.textContent());
    await page.screenshot({ path: join(pictures, `bench-${picture}.png`) });
    await page.keyboard.press('Space');
    await page.waitForFunction((last) => document.querySelector('#step').textContent !== last, steps.at(-1));
  }
  await page.locator('.onward', { hasText: 'First drop' }).waitFor();
  // The volume key of a phone, where its browser hands it on.
  await page.evaluate(() => document.body.dispatchEvent(
    new KeyboardEvent('keydown', { key: 'AudioVolumeUp', bubbles: true }),
  ));
  await page.locator('.onward', { hasText: 'Full' }).waitFor();
  assert.equal(await page.evaluate(() => window.told.locks), 1, 'the screen is kept on');
  // Seconds before its time, and at it, it is heard.
  await page.waitForFunction(() => window.told.tones >= 3 && window.told.shaken >= 2);
  // A page that is shut in the middle of a pour goes on where it was.
  await page.reload();
  await page.locator('.onward', { hasText: 'Full' }).waitFor();
  await page.screenshot({ path: join(pictures, 'bench-fill.png') });
  await page.keyboard.press('Space');
  await page.locator('.onward', { hasText: 'Next' }).waitFor();
  const filled = Number(await page.locator('.clock b').textContent());
  assert.ok(filled >= 1.3, `${filled}`);
  await page.keyboard.press('PageDown');
  await page.locator('.onward', { hasText: 'Opened' }).waitFor();
  await page.screenshot({ path: join(pictures, 'bench-wait.png') });
  await page.keyboard.press('Space');
  await page.locator('.onward', { hasText: 'How did' }).waitFor();
  await page.keyboard.press('Space');
  await page.waitForURL(/#out$/);
  await page.screenshot({ path: join(pictures, 'bench-out.png') });
  let taps = 0;
  const tap = async (button) => {
    await button.click();
    taps += 1;
  };
  await tap(page.getByRole('button', { name: /^castings:/ }));
  await page.locator('h2', { hasText: 'Metal poured' }).waitFor();
  await page.screenshot({ path: join(pictures, 'bench-keypad.png'), fullPage: true });
  await tap(page.getByRole('button', { name: 'That is right' }));
  await page.locator('h2', { hasText: 'Temperature' }).waitFor();
  await tap(page.getByRole('button', { name: 'That is right' }));
  await tap(page.getByRole('button', { name: 'steadily' }));
  await tap(page.getByRole('button', { name: /^(Yes|All of them)$/ }));
  await tap(page.getByRole('button', { name: 'Keep it' }));
  assert.equal(taps, 6);
  await page.locator('.told', { hasText: 'Kept:' }).waitFor();
  await sendNow(page);
  await page.locator('footer', { hasText: 'kept here: 0, sent: 1' }).waitFor();
  const [pour] = logged('pours');
  assert.ok(Math.abs(pour.time_s - filled) <= 0.11, `${pour.time_s} and ${filled}`);
  assert.equal(pour.how, 'steady');
  assert.ok(logged('castings').every((casting) => casting.good === 1));
  // The next pour of this job wants its ten points anew.
  await page.goto(`${shop.address}${CARD}#pour`);
  await page.waitForURL(/#ready$/);
  assert.deepEqual(page.faults, []);
  await context.close();
});

test('a card of another program than the one that answers says so, and loses nothing', async () => {
  const { page, context } = await openCard();
  await keptOnPhone(page);
  await readingOfMoisture(page, '200', '188');
  await page.route('**/api/v1/cards', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ json: { ...(await answer.json()), build: 'another' } });
  });
  await page.reload();
  await page.locator('[role=alert]', { hasText: 'renewed' }).waitFor();
  await page.screenshot({ path: join(pictures, 'bench-stale.png') });
  await page.unroute('**/api/v1/cards');
  await page.getByRole('button', { name: 'Take the new card' }).click();
  await page.locator('[role=alert]').waitFor({ state: 'detached' });
  await page.locator('footer', { hasText: 'kept here: 1' }).waitFor();
  await context.close();
});

test('a batch is weighed part by part, and what the scale said is kept', async () => {
  const { page, context } = await openCard(`${CARD}#weigh`);
  await page.screenshot({ path: join(pictures, 'bench-weigh.png'), fullPage: true });
  await page.locator('.stack .big').first().click();
  await page.getByRole('button', { name: /^10 kg$/ }).click();
  for (let part = 0; part < 6; part += 1) {
    if (await page.locator('.told', { hasText: 'Kept:' }).count()) break;
    await page.locator('.big.dark').click();
    await page.waitForTimeout(150);
  }
  await sendNow(page);
  await page.locator('footer', { hasText: 'sent: 1' }).waitFor();
  const [batch] = logged('batches');
  assert.ok(batch.sand_kg > 0 && batch.note.includes(':'), JSON.stringify(batch));
  await context.close();
});

test('the weight to dry to waits for the server, and says so', async () => {
  const { page, context } = await openCard(`${CARD}#weigh`);
  await page.route('**/api/v1/bench/dry', (route) => route.abort());
  await page.getByRole('button', { name: 'The weight to dry to' }).click();
  for (const number of ['22', '9', '6']) {
    await typeIn(page, number);
    await page.waitForTimeout(150);
  }
  await page.locator('.told', { hasText: 'waits for it' }).waitFor();
  await page.unroute('**/api/v1/bench/dry');
  // 22 kg at 9 % hold 20.02 kg of sand, which at 6 % of the wet mass weigh 20.02 / 0.94.
  await page.locator('.figure b', { hasText: '21.3' }).waitFor();
  await context.close();
});

for (const width of [360, 1024]) {
  test(`nothing stands in a glove's way at ${width} px`, async () => {
    const context = await shop.browser.newContext({ viewport: { width, height: 740 }, bypassCSP: true });
    const page = await openPage({ ...shop, browser: context }, CARD, width);
    await page.waitForSelector('footer');
    await tickAll(page);
    for (const [hash, there] of [
      ['#heap', '.huge'],
      ['#jobs', '.big'],
      ['#weigh', '.stack'],
      ['#test', '.stack'],
      ['#ready', '.tick'],
      ['#out', '.stack'],
      ['#pour', '.onward'],
    ]) {
      await page.goto(shop.address + CARD + hash);
      await page.waitForSelector(there);
      await forGloves(page, `${hash} at ${width}`, width);
      if (width === 360) {
        await page.screenshot({ path: join(pictures, `bench-360-${hash.slice(1)}.png`), fullPage: true });
      }
    }
    await page.goto(`${shop.address}${CARD}#test`);
    await page.getByRole('button', { name: /^dent|^ball dent/ }).click();
    await page.waitForSelector('.keys');
    await forGloves(page, `the keypad at ${width}`, width);
    await context.close();
  });
}

for (const words of ['fr', 'es']) {
  test(`every screen has room for its words in ${words}`, async () => {
    const file = join(shop.folder, 'shop.toml');
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.replace(/^#? *words = "\w+"/m, `words = "${words}"`));
    const context = await shop.browser.newContext({ viewport: { width: 360, height: 740 }, bypassCSP: true });
    const page = await openPage({ ...shop, browser: context }, CARD, 360);
    await page.waitForSelector('footer');
    for (const hash of ['#heap', '#weigh', '#test', '#ready', '#out']) {
      await page.goto(shop.address + CARD + hash);
      await page.waitForSelector('.stack');
      await forGloves(page, `${hash} in ${words}`, 360);
      await page.screenshot({ path: join(pictures, `bench-${words}-${hash.slice(1)}.png`), fullPage: true });
    }
    assert.equal(await page.evaluate(() => document.documentElement.lang), words);
    await writeFile(file, text);
    await context.close();
  });
}

test('all of it by keys alone', async () => {
  const { page, context } = await openCard();
  await tabTo(page, 'Test');
  await page.keyboard.press('Enter');
  await page.waitForURL(/#test$/);
  await page.locator('h2', { hasText: 'Which test' }).waitFor();
  await tabTo(page, 'moisture');
  await page.keyboard.press('Enter');
  await page.locator('h2', { hasText: /^wet$/ }).waitFor();
  await page.keyboard.type('200');
  await tabTo(page, 'That is right');
  await page.keyboard.press('Enter');
  await page.locator('h2', { hasText: /^dry$/ }).waitFor();
  await page.keyboard.type('190');
  await tabTo(page, 'That is right');
  await page.keyboard.press('Enter');
  await page.locator('.told', { hasText: 'Kept:' }).waitFor();
  await context.close();
});

test('the first screen is light: no drawing in it, and soon there', async () => {
  const context = await shop.browser.newContext({ viewport: { width: 360, height: 740 } });
  const page = await context.newPage();
  const bodies = [];
  page.on('response', (answer) => bodies.push(answer.body().catch(() => Buffer.alloc(0))));
  await page.goto(shop.address + CARD);
  await page.waitForSelector('.huge');
  await page.waitForTimeout(500);
  const bytes = (await Promise.all(bodies)).reduce((sum, body) => sum + body.length, 0);
  const paint = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime);
  console.log(`first screen of the bench card: ${bytes} bytes, painted after ${Math.round(paint)} ms`);
  assert.ok(bytes < 400_000, `${bytes} bytes`);
  await context.close();
});

/** WCAG 2.2 AA, contrast of 7 to 1, large enough and far enough apart, no wider than the screen. */
async function forGloves(page, where, width) {
  await page.evaluate(axe);
  const found = await page.evaluate(() =>
    window.axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } }),
  );
  const told = found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html)}`);
  assert.deepEqual(told, [], where);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= width, `${where}: ${wide} px wide`);
  const boxes = await page.evaluate(() =>
    [...document.querySelectorAll('button, a')].map((one) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      return { text: one.textContent.trim(), left, right, top, bottom, pinned: !!one.closest('.onward') };
    }),
  );
  for (const box of boxes) {
    assert.ok(box.bottom - box.top >= FINGER - 0.5, `${where}: ${box.text} is ${box.bottom - box.top} px high`);
    assert.ok(box.right - box.left >= FINGER - 0.5, `${where}: ${box.text} is narrow`);
    for (const other of boxes) {
      if (other === box || other.pinned !== box.pinned) continue;
      const across = Math.max(other.left - box.right, box.left - other.right);
      const down = Math.max(other.top - box.bottom, box.top - other.bottom);
      assert.ok(Math.max(across, down) >= GAP - 0.5, `${where}: ${box.text} | ${other.text}`);
    }
  }
}

/** Goes on with Tab until something that begins with these words has the cursor. */
async function tabTo(page, words) {
  for (let step = 0; step < 60; step += 1) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement.textContent.trim());
    if (text.startsWith(words)) return;
  }
  assert.fail(`no Tab leads to ${words}`);
}

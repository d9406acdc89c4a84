// Opens the lay-up book of each planned folder in a browser and uses it as a
// laminator does: turns the pages, ticks, reloads, switches plies on and off,
// prints, with and without JavaScript, light and dark, on a phone. axe looks for
// what shuts people out. From the words of the pages alone each joint is worked
// out again and held against plan.json.
//
//   node book.mjs MODULES FOLDER…    MODULES holds playwright-core and axe-core
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { rebuilt } from './stranger.mjs';

const [modules, ...folders] = process.argv.slice(2);
const require = createRequire(resolve(modules) + '/');
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: ['--no-sandbox'] });

const faults = [];
let book = '';
const fault = words => { faults.push(book + ': ' + words); };
const hold = (truth, words) => { if (!truth) fault(words); };

// opened gives a page on the book that is watched: it may ask for nothing but
// itself and may complain of nothing.
async function opened(file, options = {}, hash = '') {
  const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, offline: true, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(20000);
  await page.route('**/*', route => route.request().url().startsWith(file) ? route.continue() : route.abort());
  page.on('request', r => { if (!r.url().startsWith(file) && !r.url().startsWith('data:')) fault('asks for ' + r.url()); });
  page.on('console', m => { if (m.type() !== 'log' && !/content-visibility/.test(m.text())) fault('the browser says: ' + m.text()); });
  page.on('pageerror', e => fault('the script stops: ' + e.message));
  await page.goto(file + hash);
  return page;
}

// turned waits until a page is seen alone; it says what is seen else.
async function turned(page, id) {
  for (let i = 0; i < 40; i++) {
    if (String(await seen(page)) === id) return true;
    await page.waitForTimeout(50);
  }
  fault('page ' + id + ' is to be seen alone, not ' + await seen(page));
}

// seen lists the ids of the pages that are seen.
const seen = page => page.evaluate(() => [...document.querySelectorAll('.page')]
  .filter(p => getComputedStyle(p).contentVisibility !== 'hidden' && p.getBoundingClientRect().height > 40).map(p => p.id));

async function turns(page, ids) {
  for (const id of ids) {
    await turned(page, id);
    const small = await page.evaluate(id => [...document.querySelectorAll('#' + id + ' .turn a, #' + id + ' .ticks label, #' + id + ' button')]
      .filter(e => e.offsetParent).map(e => [e.textContent.trim(), e.getBoundingClientRect(), e.closest('.turn') ? 80 : 64])
      .filter(([, r, least]) => r.height < least - 0.1 || r.width < least - 0.1).map(([t]) => t), id);
    hold(small.length === 0, 'too small for gloves on ' + id + ': ' + small);
    const next = page.locator('#' + id + ' .turn .next');
    if (await next.count()) await next.click();
  }
  for (const id of [...ids].reverse()) {
    await turned(page, id);
    await page.keyboard.press('ArrowLeft');
  }
  await page.keyboard.press('ArrowRight');
  await turned(page, ids[1]);
}

async function ticks(page, file) {
  await page.goto(file + '#ply-1');
  const boxes = page.locator('#ply-1 .ticks input'), n = await boxes.count();
  hold(n >= 4, 'only ' + n + ' boxes to tick');
  await boxes.nth(0).check();
  await page.locator('#ply-1 .strips label').first().click();
  const states = () => boxes.evaluateAll(all => all.map(b => +b.checked).join(''));
  const before = await states();
  hold(before === '1001'.padEnd(n, '0'), 'ticked 1 and 4, seen ' + before);
  await page.reload();
  hold(await states() === before, 'ticks do not outlast a reload');
  hold((await page.locator('[data-done="ply-1"]').textContent()).startsWith('2 of ' + n), 'the contents do not count the ticks');
  await page.evaluate(() => { const k = Object.keys(localStorage); if (k.length !== 1 || !k[0].endsWith(document.documentElement.dataset.plan)) throw Error('kept under ' + k); });
  await page.goto(file + '#start');
  page.once('dialog', d => d.accept());
  await page.locator('#clear-ticks').click();
  hold(!/1/.test(await states()), 'ticks are not cleared');
}

async function switches(page, file, plan) {
  await page.goto(file + '#through');
  const worst = () => page.locator('#worst').textContent();
  const check = plan.checks.find(c => c.rule === 'stagger');
  const rows = await page.locator('#pairs tbody tr').evaluateAll(all => all.map(r => ({ a: r.dataset.a, b: r.dataset.b, um: +r.dataset.um, words: r.cells[0].textContent, x: +r.dataset.x, y: +r.dataset.y })));
  if (check?.worst) {
    const um = Math.round(check.worst.value_mm * 1000);
    hold(Math.abs(rows[0].um - um) <= 1, 'the nearest pair is ' + rows[0].um + ' µm apart, the check found ' + um);
    hold(await worst() === rows[0].words, 'the worst pair is not named: ' + await worst());
  }
  const lines = () => page.locator('svg.through').first().locator('[data-ply]').evaluateAll(all => all.filter(e => getComputedStyle(e).display !== 'none').map(e => e.dataset.ply));
  const jointed = plan.plies.filter(p => p.joints.length).map(p => String(p.ply));
  hold(String(await lines()) === String(jointed), 'not all plies are drawn');
  await page.getByRole('button', { name: 'None' }).click();
  hold((await lines()).length === 0, 'plies are drawn that are switched off');
  for (const row of [rows[0], rows[rows.length - 1]].filter(Boolean)) {
    await page.getByRole('button', { name: 'None' }).click();
    await page.locator('#switches input[value="' + row.a + '"]').check();
    hold(await worst() === 'none of the plies shown', 'one ply alone has a pair: ' + await worst());
    await page.locator('#switches input[value="' + row.b + '"]').check();
    hold(await worst() === row.words, 'of plies ' + row.a + ' and ' + row.b + ' it says ' + await worst());
    hold(String(await lines()) === String([row.a, row.b].sort((p, q) => p - q)), 'drawn are ' + await lines());
    const at = await page.locator('svg.through .worst').first().getAttribute('transform');
    hold(at === 'translate(' + row.x + ' ' + row.y + ')', 'the mark stands at ' + at);
    hold(await page.locator('svg.through .worst text').first().textContent() === row.words, 'the mark has other words');
  }
  await page.getByRole('button', { name: 'All' }).click();
  hold(String(await lines()) === String(jointed), 'not all plies come back');
}

async function shutOut(page, file, ids, scheme) {
  await page.emulateMedia({ colorScheme: scheme });
  const dark = await page.evaluate(() => { const [r, g, b] = getComputedStyle(document.body).backgroundColor.match(/\d+/g); return +r + +g + +b < 384; });
  hold(dark === (scheme === 'dark'), 'asked for ' + scheme + ', the paper is ' + (dark ? 'dark' : 'light'));
  for (const id of ids) {
    await page.goto(file + '#' + id);
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
    for (const v of violations) fault(`axe, ${scheme}, ${id}: ${v.id}: ${v.help}: ${v.nodes.slice(0, 2).map(n => n.html.slice(0, 120)).join(' | ')}`);
  }
}

async function narrow(page, file, ids) {
  for (const id of ids) {
    await page.goto(file + '#' + id);
    const w = await page.evaluate(() => document.scrollingElement.scrollWidth);
    hold(w <= 360, 'on a phone ' + id + ' is ' + w + ' px wide');
  }
}

async function printed(page, ids, plan) {
  await page.emulateMedia({ media: 'print' });
  hold(String(await seen(page)) === String(ids), 'on paper only ' + await seen(page));
  hold(await page.locator('.turn').evaluateAll(all => all.every(e => !e.offsetParent)), 'ways to turn the page are printed');
  await page.emulateMedia({ media: null });
  for (const landscape of [false, true]) {
    const pdf = await page.pdf({ format: 'A4', landscape });
    const sheets = (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) || []).length;
    hold(sheets >= plan.plies.length + 5, 'only ' + sheets + ' sheets');
  }
}

async function withoutScript(file, ids) {
  const page = await opened(file, { javaScriptEnabled: false });
  for (const id of ids) hold(await page.locator('#' + id + ' h2').isVisible(), 'without JavaScript ' + id + ' is not seen');
  hold(!await page.locator('#switches').isVisible() && !await page.locator('#clear-ticks').isVisible(), 'without JavaScript there are buttons that do nothing');
  await page.context().close();
}

for (const folder of folders) {
  book = folder.split('/').pop();
  const file = pathToFileURL(resolve(folder, 'layup-book.html')).href;
  const plan = JSON.parse(readFileSync(resolve(folder, 'plan.json'), 'utf8'));
  const before = faults.length;
  try {
    const page = await opened(file);
    const ids = await page.evaluate(() => [...document.querySelectorAll('.page')].map(p => p.id));
    const down = plan.plies.filter(p => p.face === 'down').slice(0, 1).map(p => 'ply-' + p.ply);
    const kinds = ['start', 'ply-1', ...down, 'roll-1', 'through', 'cut-list', 'order', 'laminate', 'checks', 'cautions'];
    await turns(page, ids);
    await ticks(page, file);
    await switches(page, file, plan);
    await shutOut(page, file, kinds, 'light');
    await shutOut(page, file, kinds, 'dark');
    await printed(page, ids, plan);
    for (const d of await rebuilt(page, plan)) fault(d);
    await page.context().close();
    const phone = await opened(file, { viewport: { width: 360, height: 740 } });
    await narrow(phone, file, ids);
    await phone.context().close();
    await withoutScript(file, ids);
    const joints = plan.plies.reduce((n, p) => n + p.joints.length, 0);
    if (faults.length === before) console.log(`${book}: ${ids.length} pages turned, ticked, printed; ${joints} joints found again`);
  } catch (e) {
    fault(e.message.split('\n')[0]);
  }
}
await browser.close();
for (const f of faults.slice(0, 20)) console.error(f);
if (faults.length > 20) console.error(`and ${faults.length - 20} more`);
process.exit(faults.length || !folders.length ? 1 : 0);

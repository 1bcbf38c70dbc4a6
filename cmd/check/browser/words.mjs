// The index of words: what growers type leads to the guide that answers it, from any page, by keys alone, on a narrow
// screen. The words and where they lead are written by hand: they are what people say in the field and at a counter.
import assert from 'node:assert/strict';
import { test } from 'node:test';

// What is typed, and the address of the page to which Enter leads; a part of it, where the word means that part.
const queries = {
  'terms/': [
    ['ppm', 'guides/report/#parts-per-million-and-its-other-names'],
    ['PPM', 'guides/report/#parts-per-million-and-its-other-names'],
    ['lab report', 'guides/report/'],
    ['lab', 'guides/report/'],
    ['soil test', 'guides/report/'],
    ['NO3', 'guides/report/#no3-or-no3-n'],
    ['<5', 'guides/report/#5-nd-and-trace'],
    ['burnt leaves', 'guides/wrong/#the-leaves-are-burnt'],
    ['burn', 'guides/wrong/#the-leaves-are-burnt'],
    ['yellow', 'guides/wrong/#the-leaves-are-pale'],
    ['clogged', 'guides/wrong/#emitters-are-plugged'],
    ['spill', 'guides/wrong/#a-tank-a-line-or-the-injector-leaks'],
    ['how many pounds', 'guides/ounces/#from-a-tree-to-an-acre'],
    ['ounces', 'guides/ounces/#from-a-tree-to-an-acre'],
    ['spacing', 'guides/ounces/#count-the-trees'],
    ['acid', 'guides/materials/#what-must-not-share-a-tank-or-a-line'],
    ['bleach', 'guides/materials/#what-must-not-share-a-tank-or-a-line'],
    ['bags', 'guides/materials/#from-nitrogen-to-material'],
    ['chemigation', 'guides/inject/'],
    ['fertigation', 'guides/inject/'],
    ['check valve', 'guides/inject/'],
    ['well', 'guides/water/'],
    ['feeds', 'guides/feeds/#the-limit-for-one-feed'],
    ['frost', 'guides/feeds/#when-to-start-and-stop'],
    ['dates', 'guides/feeds/#set-the-days'],
    ['urea', 'guides/grades/'],
    ['UAN', 'guides/grades/'],
    ['price', 'guides/compare/#three-side-by-side'],
    ['manure', 'guides/balance/#from-demand-to-what-you-put-on'],
    ['leaf sample', 'guides/leaf/#take-a-sample-that-means-something'],
    ['drip', 'guides/roots/#how-much-water-is-a-set'],
    ['plan', 'guides/plan/'],
    // Asked as people ask: no word of the index has all of it.
    ['when do I stop feeding', 'guides/feeds/#when-to-start-and-stop'],
    ['can I mix acid and bleach', 'guides/materials/#what-must-not-share-a-tank-or-a-line'],
    ['leaves are yellow', 'guides/wrong/#the-leaves-are-pale'],
    ['how deep', 'guides/roots/#how-deep-does-it-carry-nitrate'],
    ['how much fertilizer', 'guides/materials/#worksheet-tank'],
  ],
  'es/terminos/': [
    ['que tan hondo', 'es/guides/raices/#que-tan-hondo-lleva-el-nitrato'],
    ['cuanto abono', 'es/guides/materiales/#worksheet-tank'],
    ['ppm', 'es/guides/informe/#partes-por-millon-y-sus-otros-nombres'],
    ['laboratorio', 'es/guides/informe/'],
    ['analisis de suelo', 'es/guides/informe/'],
    ['NO3', 'es/guides/informe/#no3-o-no3-n'],
    ['quemado', 'es/guides/algo-anda-mal/#las-hojas-estan-quemadas'],
    ['hojas quemadas', 'es/guides/algo-anda-mal/#las-hojas-estan-quemadas'],
    ['amarillas', 'es/guides/algo-anda-mal/#las-hojas-estan-palidas'],
    ['palidas', 'es/guides/algo-anda-mal/#las-hojas-estan-palidas'],
    ['tapados', 'es/guides/algo-anda-mal/#los-emisores-estan-tapados'],
    ['fuga', 'es/guides/algo-anda-mal/#hay-una-fuga-o-un-derrame'],
    ['pozo', 'es/guides/agua/'],
    ['noria', 'es/guides/agua/'],
    ['onzas', 'es/guides/onzas/#de-un-arbol-a-un-acre'],
    ['ONZAS', 'es/guides/onzas/#de-un-arbol-a-un-acre'],
    ['cuantas libras', 'es/guides/onzas/#de-un-arbol-a-un-acre'],
    ['marco', 'es/guides/onzas/#cuente-los-arboles'],
    ['acido', 'es/guides/materiales/#lo-que-no-debe-compartir-tanque-ni-linea'],
    ['cloro', 'es/guides/materiales/#lo-que-no-debe-compartir-tanque-ni-linea'],
    ['costales', 'es/guides/materiales/#del-nitrogeno-al-material'],
    ['fertirriego', 'es/guides/inyectar/'],
    ['quimigacion', 'es/guides/inyectar/'],
    ['válvula', 'es/guides/inyectar/'],
    ['aplicaciones', 'es/guides/aplicaciones/#el-limite-por-aplicacion'],
    ['heladas', 'es/guides/aplicaciones/#cuando-empezar-y-parar'],
    ['fechas', 'es/guides/aplicaciones/#ponga-los-dias'],
    ['urea', 'es/guides/grados/'],
    ['precio', 'es/guides/comparar/#tres-uno-junto-al-otro'],
    ['estiercol', 'es/guides/balance-del-ano/#de-lo-que-toman-a-lo-que-se-aplica'],
    ['muestra de hojas', 'es/guides/hojas/#tome-una-muestra-que-sirva'],
    ['goteo', 'es/guides/raices/#cuanta-agua-es-un-riego'],
    ['abono', 'es/guides/materiales/'],
    ['plan', 'es/guides/plan-completo/'],
    ['¿puedo mezclar ácido y cloro?', 'es/guides/materiales/#lo-que-no-debe-compartir-tanque-ni-linea'],
    ['las hojas están amarillas', 'es/guides/algo-anda-mal/#las-hojas-estan-palidas'],
  ],
};

const shown = (page) => page.locator('.terms section > ul > li').filter({ visible: true });

// words tries the index of the site at an origin. Reader gives a page of somebody who has not been here.
export function words(origin, reader) {
  for (const [index, list] of Object.entries(queries)) {
    test(`${index}: ${list.length} words lead to their guides`, async (t) => {
      const page = await reader(t, 'fr-FR');
      const faults = [];
      page.on('console', (message) => faults.push(message.text()));
      page.on('pageerror', (error) => faults.push(error.message));
      const wrong = [];
      await page.goto(`${origin}/${index}`);
      for (const [typed, way] of list) {
        // The click of Enter is caught: to load each guide would take a minute.
        const to = await page.evaluate((text) => {
          let to = 'nowhere';
          const caught = (event) => { event.preventDefault(); to = event.target.closest('a').href; };
          addEventListener('click', caught, { once: true });
          const box = document.querySelector('.find input');
          box.value = text;
          box.dispatchEvent(new Event('input'));
          box.form.requestSubmit();
          removeEventListener('click', caught);
          return to;
        }, typed);
        if (to !== `${origin}/${way}`) {
          wrong.push(`${typed}: ${to}, not ${way}`);
        }
      }
      assert.deepEqual([wrong, faults], [[], []]);
    });
  }

  test('a word is typed at the foot of a guide, with keys alone, at 320 pixels', async (t) => {
    const page = await reader(t, 'fr-FR', { viewport: { width: 320, height: 640 } });
    const asked = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${origin}/es/guides/agua/`);
    const box = page.locator('.foot input[type=search]');
    await box.focus();
    await page.keyboard.type('ácido');
    await page.keyboard.press('Tab');
    assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Buscar');
    await page.keyboard.press('Enter');
    await page.waitForURL(`${origin}/es/terminos/#?%C3%A1cido`);
    await page.getByText(/Palabras encontradas: \d/).waitFor();
    assert.equal(await page.locator('.find input').inputValue(), 'ácido');
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320), 'the page scrolls sideways');
    await page.locator('.find input').focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/materiales\/#lo-que-no-debe/);
    await page.goBack();
    await page.waitForURL(`${origin}/es/terminos/#?%C3%A1cido`);
    assert.ok(await shown(page).count() < 10, 'the way back leads to the whole index');
    assert.deepEqual(asked.filter((url) => /cido/.test(url)), [], 'a word went to the server');
  });

  test('with a word in the address the list is narrow when it is first seen', async (t) => {
    const page = await reader(t, 'fr-FR');
    await page.addInitScript(() => {
      window.shifts = [];
      new PerformanceObserver((list) => shifts.push(...list.getEntries().map(({ value }) => value))).observe({ type: 'layout-shift' });
    });
    for (const typed of ['roots', 'nitrrate', 'xqzj']) {
      await page.goto('about:blank');
      await page.goto(`${origin}/terms/#?${typed}`);
      await page.waitForFunction(() => document.querySelector('.find [role=status]')?.textContent);
      await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
      assert.deepEqual(await page.evaluate(() => shifts), [], typed);
      assert.ok(await page.locator('.foot').isVisible());
    }
  });

  test('what nobody wrote shows what is nearest, and an empty box shows all', async (t) => {
    const page = await reader(t, 'fr-FR');
    await page.goto(`${origin}/terms/`);
    const all = await shown(page).count();
    const letters = page.locator('.terms nav');
    const told = () => page.locator('.find [role=status]').innerText();
    await page.locator('.find input').fill('nitrrate');
    assert.match(await told(), /^No word here begins with that\..*The nearest ones are:$/s);
    assert.ok((await shown(page).allTextContents()).some((text) => text.startsWith('nitrate')), 'nitrate is not near nitrrate');
    await page.locator('.find input').fill('xqzj');
    assert.equal(await shown(page).count(), 0);
    assert.doesNotMatch(await told(), /nearest/);
    await page.locator('.find input').press('Enter');
    assert.match(page.url(), /\/terms\/#\?xqzj$/);
    await page.locator('.find input').fill('chemi');
    assert.equal(await told(), 'Words found: 1');
    assert.deepEqual(await shown(page).locator('> b').allTextContents(), ['chemigation', 'injecting']);
    assert.ok(!await letters.isVisible());
    await page.locator('.find input').fill(' ');
    assert.deepEqual([await shown(page).count(), await told()], [all, '']);
    assert.ok(await letters.isVisible());
    await page.goto(`${origin}/terms/#?%E0%A4%A`); // no text has these bytes
    await page.reload();
    assert.equal(await shown(page).count(), all);
  });

  test('a word of the other language leads to the index in that language, with the word', async (t) => {
    for (const [from, typed, way, to, first] of [
      ['terms/', 'pozo', 'Búsquela en el índice en español', 'es/terminos/', 'pozo'],
      ['es/terminos/', 'manure', 'Look for it in the English index', 'terms/', 'manure'],
    ]) {
      const page = await reader(t, 'fr-FR', { viewport: { width: 320, height: 640 } });
      const asked = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(`${origin}/${from}`);
      const link = page.getByRole('link', { name: way });
      assert.ok(!await link.isVisible(), `${from} has the way before a word is typed`);
      await page.locator('.find input').fill('nitr');
      assert.ok(!await link.isVisible(), `${from} has the way beside what it found`);
      await page.locator('.find input').fill(typed);
      assert.ok((await link.boundingBox()).height >= 44, 'the way is too low for a finger');
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320), 'the page scrolls sideways');
      await link.click();
      await page.waitForURL(`${origin}/${to}#?${typed}`);
      assert.equal(await page.locator('.find input').inputValue(), typed);
      assert.match((await shown(page).locator('> b').allTextContents()).join(), RegExp(`\\b${first}\\b`));
      assert.deepEqual(asked.filter((url) => url.includes(typed)), [], 'a word went to the server');
    }
  });

  test('without a script the index is whole', async (t) => {
    const page = await reader(t, 'fr-FR', { javaScriptEnabled: false });
    await page.goto(`${origin}/guides/soil/`);
    await page.click('#find');
    await page.waitForURL(`${origin}/terms/`);
    assert.ok(await shown(page).count() > 200);
    assert.equal(await page.locator('input').count(), 0);
    await page.click('.terms nav a >> text=/^N$/');
    await page.click('.terms b:text-is("burn") ~ a');
    await page.waitForURL(/#term_\d+$/);
    await page.click(':target a');
    await page.waitForURL(`${origin}/guides/wrong/#the-leaves-are-burnt`);
  });
}

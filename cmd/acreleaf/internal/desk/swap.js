// Puts what is new into the page that is open, so that nothing moves but what changed. A page that is not built like
// the one that is open is loaded instead.

let swaps = 0;

// fetchPage gets the page as it is now. The browser parses it and runs nothing in it.
function fetchPage() {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.responseType = 'document';
    request.addEventListener('load', () => resolve(request.response));
    request.addEventListener('error', reject);
    request.open('GET', location.pathname);
    request.send();
  });
}

const head = (page, selector, attribute) => page.querySelector(`head > ${selector}`)?.getAttribute(attribute) ?? '';
const markOf = (page) => head(page, 'script[data-made]', 'data-made');

// built is what a page loads. The part of its mark after the hyphen stands for the pictures: the browser would show
// those that it has.
const built = (page) => [
  head(page, 'link[rel=stylesheet]', 'href'), head(page, 'script[defer]', 'src'), head(page, 'base', 'href'),
  markOf(page).split('-')[1],
].join(' ');

// swap brings the page up to date and gives its mark; nothing when it is loaded again instead.
async function swap() {
  const next = await fetchPage();
  if (!next?.body || built(next) !== built(document)) {
    reload();
    return undefined;
  }
  const place = notePlace();
  document.title = next.title;
  document.documentElement.lang = next.documentElement.lang;
  document.body.className = next.body.className;
  document.body.replaceChildren(...next.body.childNodes);
  const mark = markOf(next);
  document.querySelector('head > script[data-made]').dataset.made = mark;
  fillIn(place);
  scroll(place);
  focusAgain(place);
  const scripts = document.querySelectorAll('head > script[defer]');
  if (scripts.length) {
    swaps++;
    for (const { src } of scripts) {
      await import(`${src}?${swaps}`); // the same script is run once more only by another name
    }
    await new Promise((resolve) => live(resolve));
    scroll(place); // what the worksheets say may be longer or shorter than what is printed
  }
  return mark;
}

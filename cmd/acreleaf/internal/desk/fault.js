// What is wrong with the site, over the page: the same lines as in the terminal. All of it is set as text.

const host = document.createElement('div');
const shade = host.attachShadow({ mode: 'open' });

function make(name, attributes, text, ...children) {
  const element = document.createElement(name);
  Object.entries(attributes).forEach(([attribute, value]) => element.setAttribute(attribute, value));
  element.append(...(text ? [text] : []), ...children);
  return element;
}

const title = make('h2', { id: 'title' });
const fold = make('button', { type: 'button', 'aria-controls': 'faults' });
const list = make('div', { id: 'faults' });
// The lists are read out when something is put into them, so they are there from the start.
const alert = make('div', { role: 'alert' }, '', title, list);
const panel = make('section', { 'aria-labelledby': 'title', hidden: '' }, '', fold);
const mended = make('p', { role: 'status', class: 'spoken' });
panel.prepend(alert);
const style = make('link', { rel: 'stylesheet', href: '/.desk/desk.css' });
const styled = new Promise((resolve) => ['load', 'error'].forEach((event) => style.addEventListener(event, resolve)));
shade.append(style, panel, mended);

function folded(is) {
  list.hidden = is;
  fold.textContent = is ? 'Show' : 'Hide';
  fold.setAttribute('aria-expanded', String(!is));
}

fold.addEventListener('click', () => folded(!list.hidden));
document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape' && !panel.hidden && !list.hidden) {
    folded(true);
  }
});

function faultView({ head, source, note }) {
  return make('div', { class: 'fault' }, '',
    make('p', { class: 'head' }, head),
    ...(source ? [make('pre', { tabindex: '0' }, source)] : []),
    ...(note ? [make('p', { class: 'note' }, note)] : []));
}

// toCarets moves a line that is wider than the screen so that what is marked in it is seen.
function toCarets(box) {
  const carets = box.textContent.split('\n')[1] ?? '';
  const cell = box.scrollWidth / Math.max(...box.textContent.split('\n').map((line) => line.length));
  const [from, to] = [carets.indexOf('^') * cell, carets.length * cell];
  box.scrollLeft = to > box.clientWidth ? Math.min(from - cell, to - box.clientWidth + cell) : 0;
}

// showFaults shows what is wrong now; an empty list says that it is mended.
async function showFaults({ summary, faults, more }) {
  if (!host.isConnected) { // to put it there again would load its style again
    document.documentElement.append(host);
  }
  await styled;
  if (!faults.length && !panel.hidden) {
    mended.textContent = 'Fixed.';
  }
  panel.hidden = !faults.length;
  if (panel.hidden) {
    title.textContent = '';
    list.replaceChildren();
    return;
  }
  mended.textContent = '';
  title.textContent = `${summary}. The last good site stays up until this is fixed.`;
  list.replaceChildren(...faults.map(faultView), ...(more ? [make('p', {}, more)] : []));
  folded(false);
  list.querySelectorAll('pre').forEach(toCarets);
}

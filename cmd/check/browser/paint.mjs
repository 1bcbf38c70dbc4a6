// How the texts of a page are drawn.

// paints gives each way in which texts are drawn, with the number of texts, and keeps their elements in window.paints.
// It is run inside the page. Two texts are drawn alike when they have the same colour, size and weight, everything that
// paints behind them is the same, and what lies across them, out of the flow of the page, is of the same kind. The text
// around a link counts as well.
export function paints() {
  const grounds = new Map();
  // What an element and those around it paint behind a text, from the inside out.
  const ground = (element) => {
    if (!element) {
      return '';
    }
    if (!grounds.has(element)) {
      const { backgroundColor, backgroundImage, opacity, filter, mixBlendMode } = getComputedStyle(element);
      const own = [backgroundColor, backgroundImage, opacity, filter, mixBlendMode].join(' ');
      const plain = own === 'rgba(0, 0, 0, 0) none 1 none normal';
      grounds.set(element, (plain ? '' : `${own}; `) + ground(element.parentElement));
    }
    return grounds.get(element);
  };
  const all = [...document.body.querySelectorAll('*')].filter((element) => element.checkVisibility());
  const box = (element) => element.getBoundingClientRect();
  // A box of a pixel or two is there for screen readers alone.
  const loose = all.filter((element) => /absolute|fixed|sticky/.test(getComputedStyle(element).position))
    .map((element) => ({ element, box: box(element) })).filter(({ box: { width, height } }) => width > 2 && height > 2);
  const across = (element) => {
    const { left, right, top, bottom } = box(element);
    return loose.filter(({ element: other, box: its }) => its.left < right && its.right > left && its.top < bottom
      && its.bottom > top && !other.contains(element) && !element.contains(other))
      .map(({ element: other }) => `${other.localName}.${other.className} ${ground(other)}`).sort().join(', ');
  };
  const look = (element) => {
    const { color, fontSize, fontWeight, textShadow, textDecorationLine } = getComputedStyle(element);
    return [color, fontSize, fontWeight, textShadow, textDecorationLine].join(' ');
  };
  const written = (element) => element.matches('input, select, textarea')
    || [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim() !== '');
  window.paints = new Map();
  for (const element of all.filter(written)) {
    const link = element.closest('a');
    const way = [element.localName, look(element), link ? `link in ${look(link.parentElement)}` : '', ground(element),
      across(element)].join(' | ');
    window.paints.set(way, [...window.paints.get(way) ?? [], element]);
  }
  return [...window.paints].map(([way, { length }]) => ({ way, texts: length }));
}

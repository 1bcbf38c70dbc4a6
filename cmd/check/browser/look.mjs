// What can be seen on a page. Each function is run inside the page.

// The page itself must not scroll sideways; a wide table scrolls in a box of its own.
export function sideways() {
  const root = document.documentElement;
  if (root.scrollWidth <= root.clientWidth) {
    return [];
  }
  const wide = [...document.body.querySelectorAll('*')]
    .filter((element) => element.getBoundingClientRect().right > root.clientWidth + 0.5)
    .map((element) => element.outerHTML.slice(0, 120));
  return [`the page is ${root.scrollWidth} wide on a screen of ${root.clientWidth}`, ...wide.slice(0, 8)];
}

// Text that its own box cuts off, where nothing lets the reader scroll to it.
export function clipped() {
  const faults = [];
  for (const element of document.body.querySelectorAll('*')) {
    const style = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    // A box of a pixel or two is there for screen readers alone.
    if (box.width <= 2 || box.height <= 2 || !element.checkVisibility() || element.closest('math, svg')) {
      continue;
    }
    const across = ['hidden', 'clip'].includes(style.overflowX) && element.scrollWidth > element.clientWidth + 1;
    const down = ['hidden', 'clip'].includes(style.overflowY) && element.scrollHeight > element.clientHeight + 1;
    if ((across || down) && element.textContent.trim() !== '') {
      faults.push(`cut off: ${element.outerHTML.slice(0, 160)}`);
    }
  }
  return [...faults, ...shortLists()];

  // Lists that are narrower than one of their options, and do not show by a dot or three that the text goes on.
  function shortLists() {
    return [...document.querySelectorAll('select')].filter((list) => {
      if (!list.checkVisibility() || getComputedStyle(list).textOverflow === 'ellipsis') {
        return false;
      }
      const { width } = list.getBoundingClientRect();
      const own = list.style.cssText;
      list.style.cssText = 'position: absolute; width: max-content; min-width: 0; max-width: none';
      const wanted = list.getBoundingClientRect().width;
      list.style.cssText = own;
      return wanted > width + 0.5;
    }).map((list) => `cuts an option off: ${list.outerHTML.slice(0, 160)}`);
  }
}

// shifted gives what stands elsewhere, or is seen where it was not, since it was called before in this page.
export function shifted() {
  const places = new Map([...document.querySelectorAll('*')].map((element) => [element, place(element)]));
  const before = window.places ?? places;
  window.places = places;
  return [...places].filter(([element, now]) => before.get(element) !== now)
    .map(([element, now]) => `from ${before.get(element)} to ${now}: ${element.outerHTML.slice(0, 120)}`);

  function place(element) {
    const { x, y, width, height } = element.getBoundingClientRect();
    const seen = element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    const sides = [x + scrollX, y + scrollY, width, height].map((side) => side.toFixed(1));
    return [...sides, seen ? 'seen' : 'not seen'].join(' ');
  }
}

// The spacing that a reader may set (WCAG 2.2, 1.4.12), by a style sheet that the policy allows.
export function spaceText() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: 0.12em !important;
    word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

// With less motion asked for, nothing moves by itself.
export function moving() {
  const faults = [];
  for (const element of document.querySelectorAll('*')) {
    const style = getComputedStyle(element);
    const lasts = (list) => list.split(',').some((time) => parseFloat(time) > 0);
    if (lasts(style.transitionDuration) || (style.animationName !== 'none' && lasts(style.animationDuration))) {
      faults.push(`moves: ${element.outerHTML.slice(0, 120)}`);
    }
    if (style.scrollBehavior === 'smooth') {
      faults.push(`scrolls smoothly: ${element.outerHTML.slice(0, 120)}`);
    }
  }
  return faults;
}

// Controls that a gloved thumb must hit: 44 CSS pixels high at least.
export function small() {
  return [...document.querySelectorAll('main :is(input, select, button, summary)')]
    .filter((element) => element.checkVisibility() && element.getBoundingClientRect().height < 43.5)
    .map((element) => `only ${element.getBoundingClientRect().height} px high: ${element.outerHTML.slice(0, 120)}`);
}

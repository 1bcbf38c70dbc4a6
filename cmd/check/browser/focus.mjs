// Walks a page with the Tab key and looks at each thing that gets the focus.
import assert from 'node:assert/strict';

const most = 800; // more stops than any page has: an index has the most

const batch = 20; // keys that are sent before the browser is asked for what it saw

// walk gives the faults met on the way from the top of the page to its end, and the number of stops. Each stop is looked
// at when the next key comes down, before it moves the focus: to wait for the screen after every key takes minutes.
export async function walk(page) {
  await page.evaluate(() => {
    document.activeElement?.blur();
    window.scrollTo(0, 0);
    window.metByTab = new Set();
  });
  await page.evaluate(`(() => {
    const look = ${look};
    window.walked = [];
    document.addEventListener('keydown', (event) => event.isTrusted && window.walked.push(look('step')), true);
  })()`);
  const keys = await page.context().newCDPSession(page);
  const tab = { key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 };
  const faults = [];
  for (let stops = -1; stops < most;) { // the first key finds no focus yet
    // A key that comes up moves nothing, and to send it takes as long as the one that goes down.
    await Promise.all(Array.from({ length: batch }, () => (
      keys.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...tab }))));
    for (const seen of await page.evaluate(() => window.walked.splice(0))) {
      if (seen.end && stops >= 0) {
        return { stops, faults };
      }
      faults.push(...seen.faults ?? []);
      stops++;
    }
  }
  return { stops: most, faults: [...faults, `the focus does not leave the page in ${most} steps`] };
}

// rings gives the faults of the ring around each stop of the last walk, in the colours that the page has now. The
// browser draws the ring of the Tab key around what a script gives the focus to after it.
export async function rings(page) {
  const { stops, faults } = await page.evaluate(look, 'rings');
  assert.ok(stops > 0, 'there was no walk before');
  return faults;
}

// look runs inside the page. An element that was met before ends the walk: the focus has come round.
function look(what) {
  if (what === 'rings') {
    const met = [...window.metByTab ?? []];
    return { stops: met.length, faults: met.flatMap((stop) => {
      stop.focus();
      const ring = document.activeElement === stop ? indicator(stop) : 'it does not take the focus again';
      return ring === '' ? [] : [`${ring}: ${stop.outerHTML.slice(0, 140)}`];
    }) };
  }
  const element = document.activeElement;
  // A field for a day is several stops in one.
  if (element?.type === 'date' && element === [...window.metByTab].at(-1)) {
    return { faults: [] };
  }
  if (!element || element === document.body || window.metByTab.has(element)) {
    return { end: true };
  }
  window.metByTab.add(element);
  const name = element.outerHTML.slice(0, 140);
  const faults = [];
  const boxes = [...element.getClientRects()].filter((box) => box.width > 0 && box.height > 0);
  const inside = boxes.some((box) => box.bottom > 1 && box.right > 1
    && box.top < innerHeight - 1 && box.left < document.documentElement.clientWidth - 1);
  if (!inside) {
    faults.push(`off the screen with the focus: ${name}`);
  } else if (!boxes.some(uncovered)) {
    faults.push(`covered with the focus: ${name}`);
  }
  const ring = indicator(element);
  if (ring !== '') {
    faults.push(`${ring}: ${name}`);
  }
  return { faults };

  // Something of the element can be hit with a pointer, so nothing lies over it.
  function uncovered(box) {
    return [0.1, 0.5, 0.9].some((part) => {
      const x = Math.min(Math.max(box.left + box.width * part, 1), innerWidth - 2);
      const y = Math.min(Math.max(box.top + box.height / 2, 1), innerHeight - 2);
      const hit = document.elementFromPoint(x, y);
      return hit !== null && (element.contains(hit) || hit.contains(element));
    });
  }

  // A ring of 2 px that stands out 3 to 1 from what it lies on (WCAG 2.2, 1.4.11 and 2.4.7).
  function indicator(focused) {
    const style = getComputedStyle(focused);
    if (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2) {
      return `no ring around the focus (outline ${style.outlineStyle} ${style.outlineWidth})`;
    }
    const ratio = contrast(paint(style.outlineColor), ground(focused));
    return ratio < 3 ? `the ring around the focus has a contrast of only ${ratio.toFixed(2)}` : '';
  }

  // What the ring is drawn on: the background behind the element, or its own where the ring lies inside its edge.
  function ground(focused) {
    const offset = parseFloat(getComputedStyle(focused).outlineOffset);
    for (let at = offset < 0 ? focused : focused.parentElement; at; at = at.parentElement) {
      const colour = paint(getComputedStyle(at).backgroundColor);
      if (colour[3] === 255) {
        return colour;
      }
    }
    return paint(matchMedia('(prefers-color-scheme: dark)').matches ? '#121212' : '#fff');
  }

  // The bytes that a colour, in whatever notation, is painted with.
  function paint(colour) {
    window.painted ??= new Map();
    if (!window.painted.has(colour)) {
      const context = new OffscreenCanvas(1, 1).getContext('2d');
      context.fillStyle = colour;
      context.fillRect(0, 0, 1, 1);
      window.painted.set(colour, context.getImageData(0, 0, 1, 1).data);
    }
    return window.painted.get(colour);
  }

  function contrast(a, b) {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (light + 0.05) / (dark + 0.05);
  }

  function luminance(colour) {
    const [r, g, b] = [...colour].slice(0, 3).map((byte) => {
      const part = byte / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  }
}

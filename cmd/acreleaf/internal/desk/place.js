// What a reader would miss when a page is made again under their eyes: the place in it, what they typed, what they
// opened and where the cursor was.
'use strict';

const kept = 'desk: place';
const blocks = 'main :is(h1,h2,h3,h4,h5,h6,p,li,dt,dd,tr,pre,summary,label,figure,img,math), footer :is(dt,dd)';
const controls = 'input, select, textarea';
const most = 40; // how many blocks are noted, from the top of the view down; the first may be the one that is edited

const all = (selector) => [...document.querySelectorAll(selector)];

// numbered tells an element by its id, or by its text and how many have the same before it.
function numbered(elements) {
  const counts = new Map();
  return elements.map((element) => {
    const text = element.id ? `#${element.id}` : `${element.tagName} ${element.textContent.trim().slice(0, 200)}`;
    const count = counts.get(text) ?? 0;
    counts.set(text, count + 1);
    return `${text} ${count}`;
  });
}

const printedOption = (select) => Math.max(0, [...select.options].findIndex((option) => option.defaultSelected));

// typed is what a reader made of a control; undefined while it is as printed.
function typed(control) {
  if (control instanceof HTMLSelectElement) {
    return control.selectedIndex === printedOption(control) ? undefined : control.selectedIndex;
  }
  if (/^(checkbox|radio)$/.test(control.type)) {
    return control.checked === control.defaultChecked ? undefined : control.checked;
  }
  return control.value === control.defaultValue ? undefined : control.value;
}

// type puts back what a reader typed. What they did not touch is as it is printed now, whatever the browser remembers.
function type(control, value) {
  if (control instanceof HTMLSelectElement) {
    control.selectedIndex = value ?? printedOption(control);
  } else if (/^(checkbox|radio)$/.test(control.type)) {
    control.checked = value ?? control.defaultChecked;
  } else {
    control.value = value ?? control.defaultValue;
  }
}

const focusable = 'a[href], button, summary, [tabindex], input, select, textarea';
const boxes = 'main [tabindex]'; // what scrolls sideways

// notePlace notes where the reader is.
function notePlace() {
  const place = { path: location.pathname, y: scrollY, blocks: [], typed: {}, open: {}, aside: {} };
  const elements = all(blocks);
  const names = numbered(elements);
  for (let i = 0; i < elements.length && place.blocks.length < most; i++) {
    const box = elements[i].getBoundingClientRect();
    if (box.height && box.bottom > 0) {
      place.blocks.push([names[i], box.top]);
    }
  }
  const note = (list, selector, value) => {
    const found = all(selector);
    numbered(found).forEach((name, i) => {
      const noted = value(found[i]);
      if (noted !== undefined) {
        list[name] = noted;
      }
    });
  };
  note(place.typed, controls, typed);
  note(place.open, 'summary', (summary) => summary.parentElement.open);
  note(place.aside, boxes, (box) => box.scrollLeft || undefined);
  const active = document.activeElement;
  const at = all(focusable).indexOf(active);
  if (at >= 0) {
    place.focus = numbered(all(focusable))[at];
    place.cursor = /^(text|search|tel|url)$/.test(active.type) ? [active.selectionStart, active.selectionEnd] : null;
  }
  return place;
}

// reload loads the page again. The place is kept for that one load, in this tab.
function reload() {
  sessionStorage.setItem(kept, JSON.stringify(notePlace()));
  history.scrollRestoration = 'manual';
  location.reload();
}

function found(selector) {
  const elements = all(selector);
  return new Map(numbered(elements).map((name, i) => [name, elements[i]]));
}

function fillIn(place) {
  found(controls).forEach((control, name) => type(control, place.typed[name]));
  found('summary').forEach((summary, name) => {
    if (name in place.open) {
      summary.parentElement.open = place.open[name];
    }
  });
}

// scroll puts the first noted block that is still there where it was in the view.
function scroll(place) {
  const now = found(blocks);
  const [name, top] = place.blocks.find(([one]) => now.get(one)?.getBoundingClientRect().height) ?? [];
  const y = name === undefined ? place.y : scrollY + now.get(name).getBoundingClientRect().top - top;
  scrollTo({ top: place.y ? y : 0, behavior: 'instant' });
  found(boxes).forEach((box, one) => (box.scrollLeft = place.aside[one] ?? box.scrollLeft));
}

function focusAgain(place) {
  const element = place.focus && found(focusable).get(place.focus);
  if (element) {
    element.focus({ preventScroll: true });
    if (place.cursor && element.value !== undefined) {
      element.setSelectionRange(...place.cursor);
    }
  }
}

// live waits until the script of the page has its worksheets at work, so that nothing moves after that.
function live(then) {
  const done = () => !document.getElementById('module') || document.body.classList.contains('live');
  const watch = new MutationObserver(() => done() && end());
  const late = setTimeout(end, 400);
  function end() {
    watch.disconnect();
    clearTimeout(late);
    then();
  }
  if (done()) {
    end();
  } else {
    watch.observe(document.body, { attributeFilter: ['class'] });
  }
}

// bringBack puts the reader where they were before the page was loaded again. The browser goes on showing the old page
// until there is something to see in the new one, so the page is not seen at its top first.
function bringBack() {
  const place = JSON.parse(sessionStorage.getItem(kept) ?? 'null');
  sessionStorage.removeItem(kept);
  if (place?.path !== location.pathname) {
    return;
  }
  const root = document.documentElement;
  root.style.visibility = 'hidden';
  const show = () => {
    root.style.removeProperty('visibility');
    if (!root.getAttribute('style')) {
      root.removeAttribute('style');
    }
  };
  let moved = false;
  ['wheel', 'touchstart', 'keydown'].forEach((event) => addEventListener(event, () => (moved = true), { once: true }));
  // Before the scripts of the page run: they find the fields filled in.
  document.addEventListener('readystatechange', () => {
    fillIn(place);
    live(() => {
      show();
      scroll(place);
      focusAgain(place);
    });
  }, { once: true });
  addEventListener('load', () => {
    if (!moved) {
      scroll(place);
    }
    history.scrollRestoration = 'auto';
  });
}

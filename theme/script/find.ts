// Finds a word in the index of terms: a box on every page leads there with what is typed, and the one on the page of the
// index leaves of it what has that word. What is typed goes in the fragment, which no browser sends to a server.

import { filled, word } from "./data";
import { all, hide } from "./element";

/** A word of the index, and what a reader may type to find it: words below it are among that. */
interface Term {
  element: HTMLElement;
  text: string;
  words: string[];
}

const MARK = "#?"; // no part of a page begins with it
const NARROWING = "narrowing";
const NEAREST = 5;
const LIKE = 0.5; // of two words; less is chance

const fold = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
const wordsOf = (text: string): string[] => fold(text).match(/[\p{L}\p{N}]+/gu) ?? [];

/** The box to type into, at the end of an element; told what is in it by its function. */
function makeBox(place: Element, go: (typed: string) => void): HTMLInputElement {
  const form = document.createElement("form");
  const box = document.createElement("input");
  const button = document.createElement("button");
  form.role = form.className = "search";
  box.type = box.enterKeyHint = "search";
  box.autocomplete = "off";
  box.ariaLabel = box.placeholder = word("find-word");
  button.textContent = word("find-go");
  form.append(box, button);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    go(box.value.trim());
  });
  place.append(form);
  return box;
}

/** How much two words have in common, from 0 to 1: the pairs of letters that are in both (Dice 1945). */
function alike(a: string, b: string): number {
  const pairs = (text: string) => [...text.slice(1)].map((letter, i) => text[i]! + letter);
  const [one, other] = [pairs(a), pairs(b)];
  return (2 * one.filter((pair) => other.includes(pair)).length) / (one.length + other.length || 1);
}

/**
 * Those that have each of the words, from the start of a word on; without any, those that are nearest. In a question as
 * people ask it ("how deep do roots go") a word counts by how few terms have it, and the shortest do not count.
 */
function find(terms: Term[], typed: string[]): [found: Term[], whole: boolean] {
  const has = (one: string) => ({ words }: Term) => words.some((own) => own.startsWith(one));
  const found = terms.filter((term) => typed.every((one) => has(one)(term)));
  if (found.length) {
    return [found, true];
  }
  const long = typed.filter((one) => one.length > 3 || /\d/.test(one));
  const asked = (long.length ? long : typed).map((one): [string, number] =>
    [one, Math.log(terms.length / (terms.filter(has(one)).length || 1))]);
  const worth = new Map<string, number>(); // of each two words, which come again and again in a long index
  const worthOf = (own: string, [one, weight]: [string, number]): number => {
    const pair = own + " " + one;
    if (!worth.has(pair)) {
      const like = own.startsWith(one) ? 1 : alike(one, own);
      worth.set(pair, like < LIKE ? 0 : like * weight);
    }
    return worth.get(pair)!;
  };
  const near = terms.map((term) => ({
    term,
    by: asked.reduce((sum, one) => sum + Math.max(...term.words.map((own) => worthOf(own, one))), 0),
  }));
  near.sort((a, b) => b.by - a.by || a.term.text.length - b.term.text.length);
  return [near.slice(0, NEAREST).filter(({ by }) => by && by * 2 > near[0]!.by).map(({ term }) => term), false];
}

/** Puts a word into a way to an index. In a file with all pages the way has another part, which says which page. */
function carry(way: HTMLAnchorElement, typed: string): void {
  way.hash = way.hash.split("?")[0] + (typed && "?" + encodeURIComponent(typed));
}

function mount(index: HTMLElement): void {
  const terms = all("section > ul > li", index).map((element): Term => {
    const text = all("b", element).map((one) => one.textContent!).join(" ");
    return { element, text: fold(element.querySelector("b")!.textContent!), words: wordsOf(text) };
  });
  let first: HTMLElement | undefined; // where the box leads
  const [place, , told, none, near] = all(".find :is(div, p)");
  const box = makeBox(place!, () => {
    keep();
    wayOf(first)?.click();
  });

  /** The words that a word leads to. */
  const seen = (element: HTMLElement): HTMLElement[] =>
    all<HTMLAnchorElement>(':scope > a[href^="#term"]', element).map(({ hash }) => document.getElementById(hash.slice(1))!);
  /** The way to the first page that a word leads to. */
  function wayOf(element?: HTMLElement): HTMLElement | null | undefined {
    return element?.querySelector<HTMLElement>('a:not([href^="#term"])') ?? (element && wayOf(seen(element)[0]));
  }
  const keep = () => history.replaceState(history.state, "", box.value ? MARK + encodeURIComponent(box.value) : location.pathname);

  function narrow(): void {
    const typed = wordsOf(box.value);
    const [found, every] = typed.length ? find(terms, typed) : [terms, true];
    const shown = new Set(found.map(({ element }) => element));
    if (typed.length) {
      shown.forEach((element) => seen(element).forEach((other) => shown.add(other))); // those that are added, too
    }
    const asked = fold(box.value.trim());
    const rank = ({ text }: Term) => +(text !== asked) + +!text.startsWith(asked);
    first = typed.length ? [...found].sort((a, b) => rank(a) - rank(b))[0]?.element : undefined;
    terms.forEach(({ element }) => hide(element, !shown.has(element)));
    all("section", index).forEach((section) => hide(section, !section.querySelector(":scope > ul > li:not([hidden])")));
    hide(index.querySelector("nav"), typed.length > 0);
    told!.textContent = typed.length && every ? filled("found-words", { number: "" + found.length }) : "";
    hide(none!, every);
    hide(near!, every || !found.length);
    all<HTMLAnchorElement>("a", none).forEach((way) => carry(way, box.value));
  }
  function take(): void {
    if (location.hash.startsWith(MARK)) {
      try {
        box.value = decodeURIComponent(location.hash.slice(MARK.length));
      } catch {
        box.value = ""; // it is no text
      }
      narrow();
    }
  }
  box.addEventListener("input", narrow);
  box.addEventListener("change", keep);
  addEventListener("hashchange", take);
  take();
}

function start(): void {
  const index = document.getElementById("terms");
  const way = document.querySelector<HTMLAnchorElement>("a#find");
  if (index) {
    mount(index);
  } else if (way) {
    makeBox(document.querySelector(".foot")!, (typed) => {
      carry(way, typed);
      way.click();
      carry(way, ""); // for one who comes back
    });
  }
  classList.remove(NARROWING);
}

// The page of an index runs this before it is drawn. With a word in its address it shows its list when that has been
// narrowed, so that nothing moves under a reader.
const { classList } = document.documentElement;
if (document.readyState === "loading") {
  classList.toggle(NARROWING, location.hash.startsWith(MARK));
  document.addEventListener("DOMContentLoaded", start);
} else {
  start();
}

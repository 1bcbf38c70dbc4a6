// Opens a page of a file that has the whole site in it: each page but the first waits in a template.
//
// One page is opened for each time that the file is loaded, since the scripts of a page are made for that. To go to
// another, the file is loaded again. The entry of the history keeps which page it shows and how far it was scrolled;
// so the fragment is free for a part of the page, as it is on the site.

interface Entry {
  page?: string;
  top?: number;
}

declare global {
  /** Opens the page that is asked for, and runs those of the scripts that it names. */
  var openPage: (scripts: (() => void)[]) => void;
}

const HOME = "/";

/** What a link to another page has for a fragment: "#/guides/soil/", or "#/guides/soil/work-it-out" for a part of it. */
const WAY = /^#(\/(?:.*\/)?)([^/]*)$/;

const entry = (): Entry => (history.state as Entry | null) ?? {};
const asked = WAY.exec(location.hash);
let page = asked?.[1] ?? entry().page ?? HOME;

/** Notes in the entry which page it shows, and more. A browser may forbid it: the way back then leads to the first page. */
function note(more?: Entry, address?: string): void {
  try {
    history.replaceState({ ...entry(), page, ...more }, "", address);
  } catch {
    // nothing is noted
  }
}

const { top: was } = entry();
note({ top: undefined }, asked?.[2] && "#" + asked[2]);
document.documentElement.hidden = page !== HOME;

globalThis.openPage = (scripts) => {
  const waiting = document.getElementById(page);
  const of = waiting ?? document.body;
  const names = of.dataset["run"]!.match(/\d+/g) ?? [];
  if (waiting instanceof HTMLTemplateElement) {
    document.title = waiting.dataset["title"]!;
    document.documentElement.lang = waiting.lang;
    document.body.replaceChildren(waiting.content);
    document.head.append(...document.querySelectorAll("body > style"));
  } else {
    page = HOME;
    note();
    document.querySelectorAll("template").forEach((template) => template.remove()); // nobody asks for them now
  }
  document.body.id = "#" + page; // with the sign, so that it is not what the fragment leads to
  document.documentElement.hidden = false;
  names.forEach((name) => scripts[+name]!());
  document.getElementById(location.hash.slice(1))?.scrollIntoView();
  if (was !== undefined) {
    scrollTo(0, was);
  }
  addEventListener("load", () => setTimeout(() => (history.scrollRestoration = "auto")));
};

addEventListener("click", ({ target }) => {
  if ((target as Element).closest('a[href^="#/"]')) {
    note({ top: scrollY }); // for the way back
  }
});
addEventListener("popstate", () => {
  const way = WAY.test(location.hash);
  if (entry().page === page || (!way && !entry().page)) {
    note(); // a part of this page
  } else {
    history.scrollRestoration = "manual"; // the browser would go to where the page before this one was
    location.reload();
  }
});

export {}; // a module, so that its names are its own

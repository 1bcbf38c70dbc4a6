// Where progress is kept on the device: by the address of its course.

import { wayTo } from "./key";
import { noProgress, readProgress, type Progress } from "./progress";

/** Why nothing is kept: the browser forbids it or is full, or what is there cannot be read. */
export type Why = "not-kept" | "not-readable";

/** What is kept of a course. */
export interface Store {
  /** It as a text; null for nothing. */
  text(): string | null;
  /** What is kept; without anything it is empty. */
  read(): Progress;
  /** Why nothing can be kept; null where it can. */
  why(): Why | null;
  /**
   * Changes what is kept. It is read, changed and written at once, since another tab may have written meanwhile. Says
   * whether it was kept.
   */
  change(how: (progress: Progress) => void): boolean;
  /** Puts a text in the place of what is kept; null for nothing. Says whether that was done. */
  put(text: string | null): boolean;
  /** Clears it, and the answers in the fields of this tab. Says whether that was done. */
  clear(): boolean;
}

const ROOM = 1000; // letters that there must be room for

/** Opens the store of a course, whose page is at an address from here. */
export function openStore(way: string): Store {
  const pathname = wayTo(way);
  const key = "course " + pathname;
  let failed = false;
  try {
    localStorage.setItem(key + "?", "x".repeat(ROOM));
    localStorage.removeItem(key + "?");
  } catch {
    failed = true;
  }

  const text = (): string | null => {
    try {
      return localStorage.getItem(key);
    } catch {
      failed = true;
      return null;
    }
  };
  const parsed = (): Progress | null => {
    const kept = text();
    if (kept === null) {
      return noProgress();
    }
    try {
      return readProgress(JSON.parse(kept));
    } catch {
      return null;
    }
  };
  const put = (written: string | null): boolean => {
    try {
      if (written === null) {
        localStorage.removeItem(key);
      } else {
        localStorage.setItem(key, written);
      }
      failed = false;
    } catch {
      failed = true;
    }
    return !failed;
  };

  return {
    text,
    put,
    clear() {
      if (put(null)) {
        forget(pathname);
      }
      return !failed;
    },
    read: () => parsed() ?? noProgress(),
    why: () => (parsed() ? (failed ? "not-kept" : null) : "not-readable"),
    change(how) {
      const progress = parsed();
      if (!progress) {
        return false; // it may be of a newer page, and is not overwritten
      }
      how(progress);
      return put(JSON.stringify(progress));
    },
  };
}

/** Forgets what this tab keeps of the fields of the pages below a path. */
function forget(path: string): void {
  try {
    Object.keys(sessionStorage)
      .filter((name) => name.startsWith(path))
      .forEach((name) => sessionStorage.removeItem(name));
  } catch {
    // what is forbidden was never kept
  }
}

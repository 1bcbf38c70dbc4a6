import { word } from "./data";
import { mark } from "./element";

/** A figure as a reader sees it: of a given of two kinds of quantity, as the kind that is shown. */
const seen = (figure: Element): string =>
  (figure.querySelector("[data-kind]:not([hidden])") ?? figure).textContent!;

/** A part of the text that was written for the example's numbers, and the note that says so once it shows others. */
export class Passage {
  private readonly written: string[];
  private readonly note = document.createElement("small");
  private figures = ""; // those that differ from the example's, as they were written

  constructor(
    private readonly place: Element,
    private readonly own: HTMLElement[],
    press: (figure: HTMLElement) => void,
  ) {
    this.written = own.map(seen);
    this.note.className = "margin follows";
    this.note.setAttribute("role", "note");
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = word("whole");
    button.addEventListener("click", () => press(own[0]));
    this.note.append("", " ", button);
  }

  get differs(): boolean {
    return !!this.figures;
  }

  /** Marks the figures that differ from the example's; says whether that is news for the note. */
  look(): boolean {
    const before = this.figures;
    const differing = this.own.map((figure, i) => {
      const written = this.written[i];
      const differs = seen(figure) !== written;
      mark(figure, "yours", differs);
      return differs ? written : "";
    });
    this.figures = [...new Set(differing.filter(Boolean))].join(", ");
    return this.figures !== before;
  }

  /** Writes the note, or takes it away. */
  say(): void {
    if (!this.differs) {
      this.note.remove();
      return;
    }
    this.note.firstChild!.textContent = word("yours").replace("{figures}", () => this.figures);
    if (this.place.matches(".scroll")) {
      this.place.before(this.note); // beside the table, where there is a margin
    } else if (this.place.matches(".heading")) {
      this.place.after(this.note);
    } else {
      this.place.insertBefore(this.note, this.place.querySelector(":scope > :is(ul, ol)"));
    }
  }
}

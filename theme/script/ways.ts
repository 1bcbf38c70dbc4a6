import { all } from "./element";

/**
 * Links lead to folders, which a host answers with the page in them. Opened from a disk, such as a USB stick, there is
 * no host: the same links then lead to the file itself.
 */
export function leadToFiles(): void {
  if (location.protocol === "file:") {
    all<HTMLAnchorElement>("a[href]").forEach((link) => {
      if (link.protocol === "file:" && link.pathname.endsWith("/")) {
        link.pathname += "index.html";
      }
    });
  }
}

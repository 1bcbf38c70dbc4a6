// What a learner did in a course, on its page and on those of its lessons. Only these pages load it.

import { mountCourse } from "./coursepage";
import { mountLesson } from "./learn";
import type { Syllabus } from "./wire";

const line = document.querySelector<HTMLElement>("[data-course]");
const block = document.getElementById("course");

if (line) {
  mountLesson(line);
}
if (block) {
  mountCourse(JSON.parse(block.textContent!) as Syllabus);
}

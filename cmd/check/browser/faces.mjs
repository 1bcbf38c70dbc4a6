// The four faces of an exercise beside its printed key: what a face leaves to the learner is right when it is answered
// from the paper, and what it shows as worked comes to the numbers on the paper.

// faces is run inside the page, with what the key has of one card: its address, and each step and part in numbers. It
// gives what does not agree, and how many answers and lines it compared.
export function faces({ anchor, number, steps, asked }) {
  const exercise = document.getElementById(anchor);
  const faults = [];
  const compared = { answers: 0, lines: 0 };
  const change = (field, value) => {
    field.value = value;
    field.dispatchEvent(new Event('change', { bubbles: true }));
  };
  const choose = (face) => {
    const select = exercise.querySelector('.face');
    change(select, select.options[face].value);
    change(exercise.querySelector('.card input'), number);
  };
  // What the paper has for a field, by its label: two steps of one name come in the same order there.
  const onPaper = (fields) => {
    const left = { steps: [...steps], asked: [...asked] };
    return fields.map((field) => {
      const list = field.matches('.step') ? left.steps : left.asked;
      const label = field.querySelector('label').textContent;
      const at = list.findIndex((one) => one.label === label);
      return at < 0 ? { label, text: 'not there' } : list.splice(at, 1)[0];
    });
  };
  const visible = (selector) => [...exercise.querySelectorAll(selector)].filter((one) => one.checkVisibility());
  const fields = [...exercise.querySelectorAll('li[data-asked]:not(.pick)')];
  const paper = onPaper(fields);
  const answer = (face, i) => {
    const field = fields[i];
    field.querySelector('input').value = paper[i].text;
    field.querySelector('.entry button').click();
    const said = [...field.querySelectorAll('.mark > :not([hidden])')].map((one) => one.textContent).join(' ');
    const key = field.querySelector('.mark > .right:not([hidden]) .key')?.textContent;
    compared.answers++;
    if (key !== paper[i].text) {
      faults.push(`face ${face}: ${paper[i].label} is ${paper[i].text} on paper, and the page says "${said}"`);
    }
  };
  // The results of the lines that are worked: a number and its unit.
  const worked = () => visible('.solution .work li').map((line) => {
    const numbers = [...[...line.querySelectorAll('math')].at(-1).querySelectorAll('mn')];
    return numbers.at(-1)?.parentElement.textContent.replaceAll('\u00a0', ' ').replace(/^.*=/, '') ?? '';
  });
  const places = (text) => text.split(' ')[0].split('.')[1]?.length ?? 0;
  const value = (text) => Number(text.split(' ')[0].replaceAll(',', ''));
  // Both are rounded from the same number. Where one has fewer digits, the other has to round to it, a tie upwards.
  const round = (text, places) => Math.round(Number(`${value(text)}e${places}`));
  const same = (one, other) => {
    const fewer = Math.min(places(one), places(other));
    return one.split(' ').slice(1).join(' ') === other.split(' ').slice(1).join(' ')
      && round(one, fewer) === round(other, fewer);
  };
  const shown = (face, wanted) => {
    const lines = worked();
    let from = 0;
    for (const { label, text } of wanted) {
      const at = lines.findIndex((line, i) => i >= from && same(line, text));
      compared.lines++;
      if (at < 0) {
        faults.push(`face ${face}: ${label} is ${text} on paper, and the work has ${lines.slice(from).join('; ')}`);
      } else {
        from = at + 1;
      }
    }
  };
  const [all, butLast, names, alone] = [0, 1, 2, 3];
  for (const face of [all, butLast, names, alone]) {
    choose(face);
    const open = fields.map((field, i) => [field, i]).filter(([field]) => field.checkVisibility()).map(([, i]) => i);
    const parts = fields.filter((field) => !field.matches('.step'));
    const left = { [all]: 0, [butLast]: 1, [names]: fields.length, [alone]: parts.length }[face];
    if (open.length !== left) {
      faults.push(`face ${face} asks for ${open.length} numbers, and not ${left}`);
    }
    if (face <= butLast) {
      shown(face, paper.filter((_, i) => !open.includes(i)));
    } else if (visible('.solution .work li').length) {
      faults.push(`face ${face} shows the work before an answer`);
    }
    open.forEach((i) => answer(face, i));
  }
  return { faults, ...compared };
}

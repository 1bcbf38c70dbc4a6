// A pocket calculator that works from what a person reads on the page. It knows nothing of how the page came to print
// it: it takes the text of a line apart, keys in number after number in exact fractions, and rounds as a person does.

// lines gives each line of work that can be seen on a page: its worksheet, the text of it in names, and the tokens of
// what it has in numbers. It is run inside the page.
export function lines() {
  dispatchEvent(new Event('beforeprint')); // work that is out of sight is written in a pause, or for paper
  // A number and the unit after it; words and signs by themselves. A root and a power get brackets, as on paper.
  const tokens = (element) => [...element.childNodes].flatMap((child) => {
    if (child.nodeType !== Node.ELEMENT_NODE) {
      return [];
    }
    const text = child.textContent.replaceAll('\u00a0', ' ');
    switch (child.localName) {
      case 'mrow': return tokens(child);
      case 'msqrt': return [{ sign: 'sqrt' }, { sign: '(' }, ...tokens(child), { sign: ')' }];
      case 'msup': return [{ sign: '(' }, ...tokens(child.firstElementChild), { sign: ')' }, { sign: '^' },
        { number: child.lastElementChild.textContent }];
      case 'mn': return [{ number: text }];
      case 'mo': return [{ sign: text }];
      default: return [{ text: text.trim(), day: child.hasAttribute('data-day') }];
    }
  });
  return [...document.querySelectorAll('.work li')].filter((line) => line.checkVisibility()).flatMap((line) => {
    const [names, ...sums] = line.querySelectorAll('math');
    return sums.filter((sum) => sum.checkVisibility()).map((sum) => ({
      sheet: sum.closest('section').id.replace('worksheet-', ''), names: names.textContent,
      printed: sum.textContent, bare: !!sum.closest('.bare'), tokens: tokens(sum.querySelector('mrow')),
    }));
  });
}

// The words of a line in Spanish, and what they are in English.
const spanish = {
  y: 'and', 'redondeado hacia arriba:': 'rounded up:', 'redondeado hacia abajo:': 'rounded down:',
  'sin signo:': 'the size of', 'el menor de': 'the smaller of', 'el mayor de': 'the larger of',
};

// check says what is wrong with a line: "" for nothing, and null for a line without a formula in numbers.
export function check({ tokens: printed, bare }) {
  const tokens = printed.map((token) => ({ ...token, ...(spanish[token.text] && { text: spanish[token.text] }) }));
  const signs = tokens.flatMap((token, at) => (token.sign === '=' ? [at] : []));
  if (bare || signs.length < 2) {
    return null;
  }
  const formula = tokens.slice(signs[0] + 1, signs[1]);
  const [shown, unit] = result(tokens.slice(signs[1] + 1));
  const got = new Calculator(formula).all();
  if (typeof shown === 'number') {
    return near(got, [BigInt(shown), 1n]) ? '' : `it is day ${Number(got[0]) / Number(got[1])}`;
  }
  const millionth = unit.startsWith('ppm') && !formula.some(({ text }) => text?.startsWith('ppm'));
  const scaled = over(got, times(scale(unit), millionth ? [1n, 1_000_000n] : [1n, 1n]));
  const [, part = '', power = '0'] = shown.match(/^[^.×]*(?:\.(\d+))?(?: × 10\^(-?\d+))?$/);
  const places = part.length - Number(power);
  return near(rounded(scaled, places), fraction(shown)) ? '' : `the calculator shows ${show(scaled)}`;
}

// result reads what comes after the last sign: a number and its unit, or a day.
function result(tokens) {
  const day = tokens.find((token) => token.day);
  if (day) {
    return [dayOf(day.text), ''];
  }
  const at = tokens.findIndex(({ number }) => number !== undefined);
  return [tokens[at].number, tokens[at + 1]?.text ?? ''];
}

class Calculator {
  constructor(tokens) {
    this.tokens = tokens;
    this.at = 0;
  }

  all() {
    const value = this.sum();
    if (this.at < this.tokens.length) {
      throw new Error(`cannot key in ${JSON.stringify(this.tokens[this.at])}`);
    }
    return value;
  }

  sum() {
    let value = this.product();
    for (;;) {
      if (this.take('+')) {
        value = plus(value, this.product());
      } else if (this.take('−')) {
        value = plus(value, times(this.product(), [-1n, 1n]));
      } else {
        return value;
      }
    }
  }

  product() {
    let value = this.power();
    for (;;) {
      if (this.take('×')) {
        value = times(value, this.power());
      } else if (this.take('÷')) {
        value = over(value, this.power());
      } else {
        return value;
      }
    }
  }

  power() {
    const base = this.one();
    if (!this.take('^')) {
      return base;
    }
    const exponent = Number(this.tokens[this.at++].number);
    return Array.from({ length: exponent }).reduce((value) => times(value, base), [1n, 1n]);
  }

  one() {
    const { number, sign, text, day } = this.tokens[this.at++];
    if (number !== undefined) {
      const value = number === 'π' ? real(Math.PI) : fraction(number);
      const unit = this.tokens[this.at];
      if (unit?.text && !unit.day && !words.includes(unit.text)) {
        this.at++;
        return times(value, scale(unit.text));
      }
      return value;
    }
    if (sign === '(') {
      const value = this.sum();
      this.need(')');
      return value;
    }
    if (sign === 'sqrt') {
      return real(Math.sqrt(float(this.one())));
    }
    return day ? [BigInt(dayOf(text)), 1n] : text === '$' ? this.one() : this.call(text);
  }

  call(name) {
    const first = this.one();
    switch (name) {
      case 'rounded up:': return whole(first, 1n);
      case 'rounded down:': return whole(first, 0n);
      case 'the size of': return first[0] < 0n ? times(first, [-1n, 1n]) : first;
      case 'arccos': return real(Math.acos(float(first)));
    }
    if (this.tokens[this.at++]?.text !== 'and') {
      throw new Error(`no "and" after ${name}`);
    }
    const second = this.one();
    const less = plus(first, times(second, [-1n, 1n]))[0] < 0n;
    switch (name) {
      case 'the smaller of': return less ? first : second;
      case 'the larger of': return less ? second : first;
    }
    throw new Error(`cannot key in ${name}`);
  }

  take(sign) {
    const found = this.tokens[this.at]?.sign === sign;
    this.at += found ? 1 : 0;
    return found;
  }

  need(sign) {
    if (!this.take(sign)) {
      throw new Error(`no ${sign}`);
    }
  }
}

const words = ['and', 'rounded up:', 'rounded down:', 'the size of', 'arccos', 'the smaller of', 'the larger of'];

// scale is what a unit makes of its number: 35 % is 0.35, 68 lb for each 1000 lb is 0.068.
function scale(unit) {
  const percent = unit.startsWith('%') ? [1n, 100n] : [1n, 1n];
  return / (per|por) 1000 /.test(unit) ? times(percent, [1n, 1000n]) : percent;
}

function fraction(text) {
  const [, sign, digits, power] = text.replaceAll(',', '').match(/^([-−]?)([\d.]+)(?: × 10\^(-?\d+))?$/)
    ?? fail(`no number: ${text}`);
  const [whole, part = ''] = digits.split('.');
  const exponent = BigInt(power ?? 0) - BigInt(part.length);
  const value = BigInt(whole + part) * (sign ? -1n : 1n);
  return exponent < 0n ? reduced([value, 10n ** -exponent]) : [value * 10n ** exponent, 1n];
}

const fail = (why) => { throw new Error(why); };

// rounded rounds to so many decimal places, a tie away from nothing.
function rounded([above, below], places) {
  const [ten, back] = [10n ** BigInt(Math.max(places, 0)), 10n ** BigInt(Math.max(-places, 0))];
  const size = ((above < 0n ? -above : above) * ten * 2n + below * back) / (below * back * 2n);
  return reduced([(above < 0n ? -size : size) * back, ten]);
}

// whole is the whole number not below (up is 1) or not above (0).
function whole([above, below], up) {
  const floor = above / below - (above % below < 0n ? 1n : 0n);
  return [floor + (up && above % below !== 0n ? 1n : 0n), 1n];
}

// real is a number that only a calculator has.
function real(value) {
  return Number.isFinite(value) ? fraction(value.toFixed(20)) : fail('no number');
}

const float = ([above, below]) => Number(above * 10n ** 30n / below) / 1e30;
const plus = ([a, b], [c, d]) => reduced([a * d + c * b, b * d]);
const times = ([a, b], [c, d]) => reduced([a * c, b * d]);
const over = (value, [c, d]) => (c === 0n ? fail('divided by 0') : times(value, c < 0n ? [-d, -c] : [d, c]));
const near = ([a, b], [c, d]) => a * d === c * b;
const show = ([above, below]) => String(Number(above * 10n ** 12n / below) / 1e12);

const months = ['enero', 'febrero', 'marzo', 'abril', 'mayo', 'junio', 'julio', 'agosto', 'septiembre', 'octubre',
  'noviembre', 'diciembre'];

// dayOf counts the days to a date, such as Apr 26, 2027, or 26 de abril de 2027.
function dayOf(text) {
  const [, day, month, year] = text.match(/^(\d+) de (\p{L}+) de (\d+)$/u) ?? [];
  return (day ? Date.UTC(year, months.indexOf(month), day) : Date.parse(`${text} UTC`)) / 864e5;
}

function reduced([above, below]) {
  let [a, b] = [above < 0n ? -above : above, below];
  while (b) {
    [a, b] = [b, a % b];
  }
  return a > 1n ? [above / a, below / a] : [above, below];
}

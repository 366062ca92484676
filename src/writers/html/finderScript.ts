/**
 * Added to a page with a long table: it shows a hundred rows at a time, finds rows by what is chosen or typed, and before printing
 * lays out all that were found by group. Without it the whole table stands there. It keeps nothing and sends nothing.
 */
export const FINDER_SCRIPT = `
'use strict';
(() => {
  const SIZE = 100;
  for (const finder of document.querySelectorAll('.finder')) {
    const table = document.getElementById(finder.dataset.table);
    const [body, rest] = table.tBodies;
    let all = [...body.rows, ...rest.rows];
    rest.remove();
    const choices = [...finder.querySelectorAll('select')];
    const fields = [...finder.querySelectorAll('input')];
    const [back, on] = finder.querySelectorAll('button');
    const shown = finder.querySelector('.shown');
    let page = 0;
    const cell = (row, control) => row.cells[control.dataset.column];
    const fits = (row) =>
      choices.every((one) => one.value === '' || cell(row, one).dataset.find === one.value) &&
      fields.every((one) => cell(row, one).textContent.toLowerCase().includes(one.value.trim().toLowerCase()));
    const draw = () => {
      const found = all.filter(fits);
      page = Math.max(0, Math.min(page, Math.ceil(found.length / SIZE) - 1));
      const from = page * SIZE;
      const view = found.slice(from, from + SIZE);
      body.replaceChildren(...view);
      back.disabled = page === 0;
      on.disabled = from + SIZE >= found.length;
      const numbers = { from: found.length === 0 ? 0 : from + 1, to: from + view.length, of: found.length, all: all.length };
      shown.textContent = shown.dataset.text.replace(/@(\\w+)/g, (_, name) => String(numbers[name]));
    };
    const again = () => {
      page = 0;
      draw();
    };
    const turn = (by) => {
      page += by;
      draw();
      table.scrollIntoView();
    };
    for (const one of choices) one.addEventListener('change', again);
    for (const one of fields) one.addEventListener('input', again);
    back.addEventListener('click', () => turn(-1));
    on.addEventListener('click', () => turn(1));
    // The sorting goes over all rows: they are there before it, and in their new order after it.
    table.tHead.addEventListener('click', () => body.replaceChildren(...all), true);
    table.tHead.addEventListener('click', () => {
      all = [...body.rows];
      again();
    });
    addEventListener('beforeprint', () => {
      const [group] = choices;
      const found = all.filter(fits);
      const laid = [...group.options].flatMap(({ value }) => {
        const own = found.filter((row) => cell(row, group).dataset.find === value);
        if (own.length === 0) return [];
        const title = document.createElement('tr');
        title.className = 'group';
        const head = document.createElement('th');
        head.scope = 'rowgroup';
        head.colSpan = table.tHead.rows[0].cells.length;
        head.textContent = value + ': ' + own.length;
        title.append(head);
        return [title, ...own];
      });
      body.replaceChildren(...laid);
    });
    addEventListener('afterprint', draw);
    finder.hidden = false;
    draw();
  }
})();
`;

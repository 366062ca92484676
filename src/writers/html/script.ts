/**
 * The page's one script, as it stands in the file; its hash stands in the page's policy. Nothing to read depends on it:
 * it lets the days be read hour by hour and be hidden, lets tables that say so be sorted, and takes scroll areas that fit
 * out of the tab order. It takes all its words from the page, keeps nothing and sends nothing.
 */
export const SCRIPT = `'use strict';
(() => {
  const all = (what, within = document) => [...within.querySelectorAll(what)];

  for (const strip of all('.strip')) {
    const pointer = strip.querySelector('input[type=range]');
    const rows = all('tbody tr', strip);
    if (!pointer || rows.length === 0) continue;
    const titles = all('thead th', strip).map((cell) => cell.textContent);
    const readout = strip.querySelector('.readout');
    const mark = document.createElement('div');
    mark.className = 'mark';
    mark.hidden = true;
    const left = Number(pointer.dataset.left);
    const width = Number(pointer.dataset.right) - left;
    pointer.style.insetInlineStart = 'auto';
    pointer.style.left = 100 * left + '%';
    pointer.style.width = 100 * width + '%';
    pointer.before(mark);
    pointer.hidden = false;
    const show = () => {
      const at = Number(pointer.value);
      const cells = [...rows[at].cells].map((cell) => cell.textContent);
      const text = cells
        .map((cell, i) => (i === 0 || titles[i] === '' ? cell : titles[i] + ' ' + cell))
        .filter((cell, i) => cells[i] !== '')
        .join(' · ');
      readout.textContent = text;
      pointer.setAttribute('aria-valuetext', text);
      mark.style.left = 100 * (left + (width * at) / rows.length) + '%';
      mark.style.width = (100 * width) / rows.length + '%';
      mark.hidden = false;
    };
    const clear = () => {
      if (document.activeElement === pointer) return;
      mark.hidden = true;
      readout.textContent = '';
    };
    pointer.addEventListener('input', show);
    pointer.addEventListener('focus', show);
    pointer.addEventListener('blur', clear);
    pointer.addEventListener('pointerleave', clear);
    pointer.addEventListener('pointermove', (event) => {
      const box = pointer.getBoundingClientRect();
      const at = Math.floor(((event.clientX - box.left) / box.width) * rows.length);
      pointer.value = String(Math.min(rows.length - 1, Math.max(0, at)));
      show();
    });
  }

  for (const chooser of all('.chooser')) {
    const boxes = all('input[data-day]', chooser);
    const shown = chooser.querySelector('.shown');
    const apply = () => {
      for (const box of boxes) document.getElementById(box.dataset.day).hidden = !box.checked;
      const count = boxes.filter((box) => box.checked).length;
      const every = count === boxes.length;
      const text = every ? shown.dataset.all : shown.dataset.some.replace('#', String(count));
      if (shown.textContent !== text) shown.textContent = text;
      chooser.classList.toggle('part', !every);
    };
    for (const box of boxes) box.addEventListener('change', apply);
    for (const button of all('button[data-set]', chooser)) {
      button.addEventListener('click', () => {
        for (const box of boxes) box.checked = button.dataset.set === 'all';
        apply();
      });
    }
    chooser.hidden = false;
    apply();
  }

  for (const table of all('table.sortable')) {
    const heads = all('thead th', table);
    heads.forEach((head, column) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'sort';
      button.textContent = head.textContent;
      head.replaceChildren(button);
      button.addEventListener('click', () => {
        const down = head.getAttribute('aria-sort') === 'ascending';
        for (const one of heads) one.removeAttribute('aria-sort');
        head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
        const key = (row) => row.cells[column].dataset.key ?? '';
        const rows = all('tbody tr', table);
        const numbers = rows.every((row) => key(row) === '' || !Number.isNaN(Number(key(row))));
        rows.sort((a, b) => {
          const [x, y] = [key(a), key(b)];
          if (x === '' || y === '') return (x === '' ? 1 : 0) - (y === '' ? 1 : 0);
          const order = numbers ? Number(x) - Number(y) : x.localeCompare(y, undefined, { numeric: true });
          return down ? -order : order;
        });
        table.tBodies[0].append(...rows);
      });
    });
  }

  const fit = () => {
    for (const area of all('.scroll')) {
      if (area.scrollWidth > area.clientWidth) area.tabIndex = 0;
      else area.removeAttribute('tabindex');
    }
  };
  addEventListener('resize', fit);
  document.addEventListener('toggle', fit, true);
  fit();
})();
`;

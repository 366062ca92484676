/**
 * The page's one script, as it stands in the file; its hash stands in the page's policy. Nothing to read depends on it:
 * it lets curves be read point by point and days be hidden, lets tables that say so be sorted, and takes scroll areas that fit
 * out of the tab order. It takes all its words from the page, keeps nothing and sends nothing.
 */
export const SCRIPT = `'use strict';
(() => {
  const all = (what, within = document) => [...within.querySelectorAll(what)];

  for (const plot of all('.plot')) {
    const readout = plot.closest('figure').querySelector('.readout');
    const mark = document.createElement('div');
    mark.className = 'mark';
    mark.hidden = true;
    plot.append(mark);
    for (const slider of all('input[type=range]', plot)) {
      const says = JSON.parse(slider.dataset.says);
      const [left, right, top, bottom] = JSON.parse(slider.dataset.box);
      const at = (element, from, width) => {
        element.style.left = 100 * from + '%';
        element.style.width = 100 * width + '%';
        element.style.top = 100 * top + '%';
        element.style.height = 100 * (bottom - top) + '%';
      };
      const step = (right - left) / says.length;
      at(slider, left, right - left);
      slider.hidden = false;
      const show = () => {
        const text = says[slider.value];
        readout.textContent = text;
        slider.setAttribute('aria-valuetext', text);
        at(mark, left + step * slider.value, step);
        mark.hidden = false;
      };
      const clear = () => {
        if (document.activeElement === slider) return;
        mark.hidden = true;
        readout.textContent = '';
      };
      // So that it says where it stands when it is come to.
      slider.setAttribute('aria-valuetext', says[0]);
      // Engines place a handle that is pressed by its own width: what counts is where the pointer or finger is.
      let held;
      const point = (event) => {
        const box = slider.getBoundingClientRect();
        const place = Math.floor(((event.clientX - box.left) / box.width) * says.length);
        slider.value = String(Math.min(says.length - 1, Math.max(0, place)));
        held = event.buttons ? slider.value : undefined;
        show();
      };
      slider.addEventListener('input', () => {
        slider.value = held ?? slider.value;
        show();
      });
      slider.addEventListener('focus', show);
      slider.addEventListener('blur', clear);
      slider.addEventListener('pointerleave', clear);
      slider.addEventListener('pointerdown', point);
      slider.addEventListener('pointermove', point);
      // A finger that is lifted is followed by the clicks of a mouse that stands in for it.
      const letGo = () => setTimeout(() => { held = undefined; }, 500);
      for (const end of ['pointerup', 'pointercancel']) slider.addEventListener(end, letGo);
      slider.addEventListener('keydown', () => { held = undefined; });
    }
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

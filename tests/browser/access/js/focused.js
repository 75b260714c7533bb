/** Where the focus is, and what is wrong with it: whether a finger would touch in its place
 * what has it, and whether anything shows it. */
() => {
  const it = document.activeElement;
  if (!it || it === document.body) return null;
  const all = it.closest("label") ?? (it.labels?.[0]?.contains(it) ? it.labels[0] : it);
  const mine = (x, y) => {
    const hit = document.elementFromPoint(x, y);
    return Boolean(hit && (all.contains(hit) || hit.contains(all) && hit !== document.documentElement
      && hit !== document.body && !hit.matches("main, section, form")));
  };
  const rects = [...all.getClientRects()].filter(({ width, height }) => width && height);
  const spots = rects.flatMap(({ left, right, top, bottom, height }) =>
    [[(left + right) / 2, top + Math.min(height / 2, 4)], [(left + right) / 2, (top + bottom) / 2],
      [(left + right) / 2, bottom - Math.min(height / 2, 4)]]);
  const hits = spots.filter(([x, y]) => mine(x, y)).length;
  const box = all.getBoundingClientRect();
  const name = it.outerHTML.slice(0, 110);
  const wrong = [];
  const bars = [...document.querySelectorAll("[data-lead], [data-bar], [data-banner]")]
    .filter((each) => !each.hidden && getComputedStyle(each).position === "sticky");
  const room = innerHeight - bars.reduce((sum, each) => sum + each.offsetHeight, 0);
  if (!hits) wrong.push(`hidden: ${name}`);
  else if (hits < spots.length && box.height <= room && it.tagName !== "TEXTAREA") wrong.push(`partly hidden: ${name}`);
  const ringed = [it, all].some((each) => {
    const { outlineStyle, outlineWidth } = getComputedStyle(each);
    return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
  });
  // Of a date, the browser marks the figure itself that is typed over.
  if (!ringed && it.type !== "date") wrong.push(`nothing shows the focus: ${name}`);
  const place = (it.closest("svg") ?? all).getBoundingClientRect();
  const flows = Boolean(it.closest("main"));
  return {
    at: (window.stops ?? []).indexOf(it), name, wrong,
    top: flows ? place.top + scrollY : null, bottom: flows ? place.bottom + scrollY : null,
  };
};

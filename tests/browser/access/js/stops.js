/** What Tab should reach, in the order of the page; of radio buttons of one name one. */
() => {
  const may = "a[href], button, input, select, textarea, summary, [tabindex]";
  const within = document.querySelector("dialog:modal") ?? document;
  const stops = [...within.querySelectorAll(may)].filter((each) => {
    if (each.tabIndex < 0 || each.disabled || !each.checkVisibility({ visibilityProperty: true })) return false;
    if (each.type !== "radio" || !each.name) return true;
    const group = [...document.querySelectorAll(`[type=radio][name="${each.name}"]`)]
      .filter((one) => one.form === each.form && !one.disabled);
    const chosen = group.find((one) => one.checked);
    return chosen ? each === chosen : each === group[0];
  });
  window.stops = stops;
  document.activeElement?.blur();
  scrollTo(0, 0);
  stops[0]?.focus();
  return stops.length;
};

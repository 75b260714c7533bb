/** The styles of the later screens: fetched when Home can be used already. */

/** Resolves when they are there. @returns {Promise<unknown>} */
export function furnish() {
  const link = document.createElement("link");
  link.rel = "stylesheet";
  link.href = `${document.body.dataset.base}css/later.css`;
  const arrived = new Promise((resolve, reject) => {
    link.onload = resolve;
    link.onerror = () => reject(new Error("The styles of the finds did not arrive."));
  });
  document.head.append(link);
  return arrived;
}

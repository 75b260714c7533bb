/** Watches an audit: asks how far it is, and opens the page anew when it is done. */

const PAUSE = 1000;

/**
 * Asks until nothing goes on any more, and calls `show` with each percentage.
 * @param {() => Promise<number | null>} ask
 * @param {(percent: number) => void} show
 * @param {number} pause
 */
export async function watched(ask, show, pause) {
  for (;;) {
    await new Promise((go) => setTimeout(go, pause));
    const percent = await ask();
    if (percent === null) return;
    show(percent);
  }
}

/** @param {string} address */
async function asked(address) {
  const answer = await fetch(address, { cache: "no-store", redirect: "error" });
  // Whoever is signed out sees why on the page itself.
  return answer.ok ? /** @type {Promise<number | null>} */ (answer.json()) : null;
}

if (typeof document !== "undefined") {
  const bar = document.querySelector("[data-progress]");
  const words = document.querySelector("[data-percent]");
  if (bar instanceof HTMLProgressElement && words) {
    const address = bar.dataset.progress ?? "";
    watched(
      // What could not be asked is asked by the page that is opened anew.
      () => asked(address).catch(() => null),
      (percent) => {
        bar.value = percent;
        words.textContent = `${percent} %`;
      },
      PAUSE,
    ).then(() => location.reload());
  }
}

// Files that are dropped anywhere on the page go into its field of files, so that a drop
// beside the field does not lead away from the page. Without this the field takes them.

/** Lets the whole page take files for the field of its form. */
function takeDrops() {
  const input = document.querySelector("[data-drop] input[type=file]");
  if (!(input instanceof HTMLInputElement)) return;
  const show = (/** @type {boolean} */ over) => input.classList.toggle("drop--over", over);
  document.addEventListener("dragover", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    show(true);
  });
  document.addEventListener("dragleave", ({ relatedTarget }) => {
    if (relatedTarget === null) show(false);
  });
  document.addEventListener("drop", (event) => {
    if (!event.dataTransfer || !holdsFiles(event)) return;
    event.preventDefault();
    show(false);
    input.files = event.dataTransfer.files;
    input.focus();
  });
}

/** Whether files are dragged, and no text or link. @param {DragEvent} event */
function holdsFiles({ dataTransfer }) {
  return dataTransfer !== null && dataTransfer.types.includes("Files");
}

takeDrops();

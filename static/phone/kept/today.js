/** The day where the person is, as "2026-11-25". */
export function today(now = new Date()) {
  const [year, month, day] = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  return [year, month, day].map((part) => String(part).padStart(2, "0")).join("-");
}

/** On every page: the switch between light and dark. */
import { find } from "../lib/dom.js";
import { isDark, restoreTheme, switchTheme } from "../lib/theme.js";

const button = find("theme-switch");
const label = () => { button.textContent = isDark() ? button.dataset.toLight : button.dataset.toDark; };

button.addEventListener("click", async () => {
  const kept = switchTheme();
  label();
  await kept.catch(() => {});  // a full phone still changes its colours, for this visit
});
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", label);
await restoreTheme().catch(() => {});
label();
button.hidden = false;

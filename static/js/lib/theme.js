/** Light or dark: the system's wish until the person says otherwise. */
import { get, set } from "./store.js";

const root = document.documentElement;
const systemDark = () => matchMedia("(prefers-color-scheme: dark)").matches;

export const isDark = () => (root.dataset.theme ? root.dataset.theme === "dark" : systemDark());

export async function restoreTheme() {
  const kept = await get("theme");
  if (kept) root.dataset.theme = kept;
}

export function switchTheme() {
  root.dataset.theme = isDark() ? "light" : "dark";
  return set("theme", root.dataset.theme);
}

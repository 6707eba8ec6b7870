/** The coach's pages: the coach link's secret goes from the address into the form, links can be copied. */

/** Taken out of the address bar and the history before anybody looks over a shoulder. */
function takeSecret() {
  const secret = location.hash.slice(1);
  if (secret) history.replaceState(null, "", location.pathname);
  return secret;
}

function enterByLink(form, secret) {
  form.querySelector("[data-secret]").value = secret;
  form.requestSubmit();
}

function offerCopy(button) {
  const text = button.closest("section").querySelector("[data-copy-text]").textContent;
  button.hidden = false;
  button.addEventListener("click", async () => {
    await navigator.clipboard.writeText(text);
    button.textContent = button.dataset.copied;
  });
}

const form = document.querySelector("[data-enter]");
const secret = takeSecret();
if (form && secret) enterByLink(form, secret);
if (navigator.clipboard) document.querySelectorAll("[data-copy]").forEach(offerCopy);

/** Voice and vibration: extras beside sight and sound, used where the phone has them. */

export const canSpeak = () => "speechSynthesis" in globalThis;
export const canBuzz = () => typeof navigator.vibrate === "function";

/** Say a text in the page's language; what was being said stops, so that cues never queue up. */
export function speak(text) {
  if (!canSpeak()) return;
  const words = new SpeechSynthesisUtterance(text);
  words.lang = document.documentElement.lang;
  speechSynthesis.cancel();
  speechSynthesis.speak(words);
}

export const hush = () => { if (canSpeak()) speechSynthesis.cancel(); };

/** Long enough to be felt in a pocket. */
export const buzz = () => { if (canBuzz()) navigator.vibrate([300, 100, 300]); };

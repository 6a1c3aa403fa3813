/** The inert element that holds the words and the markup of everything that the script adds. */
const store = /** @type {HTMLTemplateElement | null} */ (document.getElementById('live'));

/**
 * A sentence of the page's language with its values in place of the names in braces.
 *
 * @param {string} name
 * @param {Record<string, string | number>} [values]
 */
export function say(name, values = {}) {
  const text = store?.dataset[name] ?? '';
  return text.replace(/\{(\w+)\}/g, (_, key) => String(values[key] ?? ''));
}

/**
 * A copy of a part of the markup kept for the script.
 *
 * @param {string} name
 */
export function part(name) {
  const kept = store?.content.querySelector(`[data-part="${name}"]`);
  return kept ? /** @type {HTMLElement} */ (kept.cloneNode(true)) : undefined;
}

/**
 * A day counted from 1 January 1970 as text.
 *
 * @param {number} day
 */
export function dayText(day) {
  const [year, month, date] = new Date(Math.floor(day) * 86_400_000).toISOString().slice(0, 10).split('-');
  return say('date', {
    day: Number(date),
    month: say('months').split(',')[Number(month) - 1] ?? '',
    year: year ?? '',
  });
}

const voice = part('voice');

/** Puts the voice into the page, from which a screen reader reads what changed. */
export function startVoice() {
  if (voice) document.body.append(voice);
}

/**
 * Says something to a screen reader.
 *
 * @param {string} text
 */
export function announce(text) {
  if (voice) voice.textContent = text;
}

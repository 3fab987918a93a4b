// Talking to the program behind the page. Every write bears the token of this
// run, so that no other site can write.

const token = document.querySelector('meta[name="jarmark-token"]').content;

// rooted is an address below the first page, wherever this one stands.
export const rooted = (path) => document.querySelector('meta[name="jarmark-root"]').content + path;

// Refused is an answer that says why something was not done.
export class Refused extends Error {
  constructor(status, answer) {
    super(answer.error || `the program answered ${status}`);
    this.status = status;
    this.answer = answer;
  }
}

// send posts a value and gives the response, whatever kind it is.
export async function send(path, value, signal, keepalive = false) {
  const response = await fetch(rooted(path), {
    method: "POST", signal, keepalive, body: JSON.stringify(value),
    headers: { "Content-Type": "application/json", "X-Jarmark-Token": token },
  });
  if (response.ok) return response;
  throw new Refused(response.status, await response.json().catch(() => ({})));
}

// ask posts a value and gives the answer's value.
export async function ask(path, value, signal, keepalive) {
  return (await send(path, value, signal, keepalive)).json();
}

// askInLines posts a value. Lines before the answer, marked as the first, are
// told as they come.
export async function askInLines(path, value, signal, each) {
  const reader = (await send(path, value, signal)).body.pipeThrough(new TextDecoderStream()).getReader();
  let answer;
  const read = (line) => {
    const value = JSON.parse(line);
    if (value.first) each(value);
    else answer = value;
  };
  let text = "";
  for (;;) {
    const { done, value: more } = await reader.read();
    if (done) break;
    text += more;
    for (let end; (end = text.indexOf("\n")) >= 0; text = text.slice(end + 1)) read(text.slice(0, end));
  }
  if (text) read(text);
  if (answer.error) throw new Refused(500, answer);
  return answer;
}

// words tells a fault to the maker.
export function words(fault) {
  if (fault instanceof Refused) return [fault.message, fault.answer.hint].filter(Boolean).join("; ");
  return "jarmark does not answer. Start it again: this page goes on by itself, and your text is kept here";
}

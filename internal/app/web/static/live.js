// A form that is worked out while one types: the newest question counts, an
// older one still on its way is given up.

const pause = 120; // ms of quiet before asking

export class Live {
  // show is given each answer; without is what is said when none comes.
  constructor(form, show) {
    this.form = form;
    this.show = show;
    this.timer = 0;
    this.asking = null;
  }

  soon() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.ask(), pause);
  }

  // stop gives up what is on its way; true where there was something.
  stop() {
    const waiting = this.timer !== 0 || this.asking !== null;
    clearTimeout(this.timer);
    this.asking?.abort();
    this.timer = 0;
    this.asking = null;
    return waiting;
  }

  async ask() {
    this.stop();
    const mine = new AbortController();
    this.asking = mine;
    for (const effort of this.form.dataset.full === "only" ? ["full"] : ["quick", "full"]) {
      let answer;
      try {
        const response = await fetch(`${this.form.dataset.try}?effort=${effort}`, {
          method: "POST",
          body: new URLSearchParams(new FormData(this.form)),
          signal: mine.signal,
        });
        if (!response.ok) throw new Error(response.statusText);
        answer = await response.json();
      } catch (error) {
        if (error.name === "AbortError" || mine.signal.aborted) return;
        this.asking = null;
        this.show(null);
        return;
      }
      if (mine.signal.aborted) return;
      this.show(answer);
      if (answer.full || answer.problems.length > 0) break;
    }
    this.asking = null;
  }
}

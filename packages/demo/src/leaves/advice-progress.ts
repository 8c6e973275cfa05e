import { html, nothing } from 'lit';
import '../elements/progress-bar.js';
import type { AdviceWork } from '../model/advice-client.js';
import type { AdviceTask, TaskState } from './advice-task.js';

/**
 * How far a piece of advice is: a bar with a way to stop it, or why there is none and a way to have it after all.
 *
 * @param state - of the task
 * @param task - the task itself
 * @param doing - what is being worked out, in words
 */
export function adviceProgress<Work extends AdviceWork>(
  { kind, problem }: TaskState<unknown>,
  task: AdviceTask<Work>,
  doing: string,
) {
  switch (kind) {
    case 'working':
      return html`<progress-bar
        class="late"
        label=${doing}
        @cancelled=${(event: Event) => {
          event.stopPropagation();
          task.cancel();
        }}
      ></progress-bar>`;
    case 'cancelled':
      return html`<p class="row" role="status">
        Stopped. <button type="button" @click=${task.again}>Work it out after all</button>
      </p>`;
    case 'failed':
      return html`<p class="problem" role="alert">${capital(problem ?? '')}</p>`;
    case 'idle':
    case 'done':
      return nothing;
  }
}

/** What the core says of an argument, without the function that it was said to. */
function capital(problem: string): string {
  const text = problem.replace(/^\w+: /, '');
  return `It could not be worked out: ${text}${/[.!?]$/.test(text) ? '' : '.'}`;
}

import type { Fastener, ShaftLine } from '../line/types.js';
import type { HoldingOffer, JointLoad } from '../loads/types.js';
import { costsOf, type LineChange } from './line-change.js';
import { figure, makeStatement } from './statement.js';
import type { Assessment, Statement } from './types.js';

/** Set screws that would hold, where those there do not: of all joints together. */
export function fastenerChanges(line: ShaftLine, { loads }: Assessment): LineChange[] {
  const offers = (loads?.joints ?? []).flatMap(offerOf);
  const [first] = offers;
  if (!first) return [];
  const bigger = offers.some(({ joint, offer }) => offer.size !== line.joints[joint]?.fastener?.size);
  const flats = offers.some(({ joint, offer }) => offer.flat && line.joints[joint]?.fastener?.flat !== true);
  return [
    {
      kind: 'fastener',
      heading: makeStatement('Set screws of the joints made to hold', {}),
      apply: (one) => ({
        ...one,
        joints: one.joints.map((joint, i) => {
          const found = offers.find((each) => each.joint === i);
          return found && joint.fastener ? { ...joint, fastener: held(joint.fastener, found.offer) } : joint;
        }),
      }),
      costs: costsOf({
        work: bigger ? 2 : 1,
        money: 1,
        destructive: flats || bigger ? 'reversible' : 'no',
        takes: offers.map(seat),
        buy: bigger
          ? [makeStatement('set screws of {size}', { size: figure('length', first.offer.size) })]
          : [],
      }),
    },
  ];
}

interface Offered {
  readonly joint: number;
  readonly offer: HoldingOffer;
}

function offerOf({ joint, fastener }: JointLoad): Offered[] {
  return fastener?.offer ? [{ joint, offer: fastener.offer }] : [];
}

function held(fastener: Fastener, { size, count, flat, threadLock, seatingTorque }: HoldingOffer): Fastener {
  return { ...fastener, size, count, flat, threadLock, seatingTorque };
}

function seat({ joint, offer }: Offered): Statement {
  const { flat, threadLock } = offer;
  const template = `joint ${joint + 1}: {count} of {size}${flat ? ', on a flat' : ''}${threadLock ? ', with thread lock' : ''}, seated with {torque}`;
  return makeStatement(template, {
    count: figure('count', offer.count),
    size: figure('length', offer.size),
    torque: figure('torque', offer.seatingTorque),
  });
}

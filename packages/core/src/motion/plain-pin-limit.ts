/**
 * Speed times angle that a universal joint on plain pins stands: 15 000 rpm × degrees, in rad²/s.
 *
 * It is 5° at 3 000 rpm and 1.5° at 10 000. Published advice of makers of small joints with plain pins; a warning, not
 * a strength: above it pins wear fast and rattle.
 */
export const PLAIN_PIN_LIMIT = 15_000 * (Math.PI / 30) * (Math.PI / 180);

import { it } from 'vitest';
import { diagnose, findPeaks, estimateSpeed } from '@sternline/core';
it('comb', () => {
  const seconds=4; let s=1; const sec=Float64Array.from({length:48000},(_,n)=>{s=(16807*s)%2147483647;return 0.25*Math.sin(2*Math.PI*55*n/48000)+0.1*(s/2147483647-0.5);});
  const samples=new Float64Array(48000*seconds); for(let k=0;k<seconds;k++)samples.set(sec,48000*k);
  const rec={name:'c',sampleRate:48000,channels:[{name:'sound',unit:'full scale',samples}],sampling:{kind:'sound',duration:seconds,rateFrom:'header',jitter:0,stampStep:0,gaps:[],equalStamps:0,unsortedRows:0,badCells:{count:0,lines:[]},clipping:[],columns:[],notes:[]}} as never;
  let t=performance.now(); estimateSpeed(rec,{range:[30,600]}); console.log('COMB speed',(performance.now()-t).toFixed(0));
  t=performance.now(); console.log('COMB peaks',findPeaks(samples,48000).length,(performance.now()-t).toFixed(0));
  t=performance.now(); diagnose({recording:rec,speed:345}); console.log('COMB diagnose',(performance.now()-t).toFixed(0));
}, 60000);

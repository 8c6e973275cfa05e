import './styles/page.css';
import './app-root.js';
import { tokens } from './styles/tokens.js';

const sheet = new CSSStyleSheet();
sheet.replaceSync(tokens.cssText);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];

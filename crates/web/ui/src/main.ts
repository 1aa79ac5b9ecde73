/** Where the page begins. */
import { mount } from 'svelte';
import Page from './Page.svelte';
import './look/paper.css';
import './look/typed.css';
import './look/part.css';
import './look/slip.css';
import './look/start.css';
import './look/drawing.css';
import './look/trial.css';
import './look/teaching.css';
import './look/narrow.css';
import './look/print.css';

const place = document.getElementById('page');
if (place) mount(Page, { target: place });

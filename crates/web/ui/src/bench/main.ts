/** Where the bench card begins. */
import { mount } from 'svelte';
import Bench from './Bench.svelte';
import './bench.css';

const place = document.getElementById('bench');
if (place) mount(Bench, { target: place });

import { mount } from "svelte";
import "./fonts.css";
import "./page.css";
import "./drawn.css";
import "./fields.css";
import "./year.css";
import "./record.css";
import Page from "./Page.svelte";

const target = document.getElementById("page");
if (target) mount(Page, { target });

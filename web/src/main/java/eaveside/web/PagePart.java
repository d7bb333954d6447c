package eaveside.web;

/** What is put into a page that is shown already, and so has no menu and no search of its own. */
public interface PagePart extends Page {}

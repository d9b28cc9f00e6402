// Style sheets are imported for their effect; the build puts them into the page's one sheet.
declare module '*.css';

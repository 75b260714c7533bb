/** In place of phone/furnish.js: there are no later screens. */

export const furnish = async () => {};

/**
 * Stands in for @stdlib/assert-has-generator-support, which asks by evaluating text as code. That
 * breaks the content-security policy of our pages; every engine that runs us has generators.
 */
module.exports = () => true;

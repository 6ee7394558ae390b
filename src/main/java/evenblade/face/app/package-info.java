/** One class per thing a user can ask; the only door for both faces, so both give the same answer. */
package evenblade.face.app;

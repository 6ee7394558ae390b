/** Engine, reduction, propeller, limits, and where every order of them lies at a speed. */
package evenblade.machine.installation;

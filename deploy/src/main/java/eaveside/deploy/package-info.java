/**
 * Starts Eaveside on one machine: the embedded PostgreSQL, the migrations and Payara Micro with the web application in
 * one process tree, from one data folder.
 *
 * <p>{@link eaveside.deploy.Launcher} is the command line. {@link eaveside.deploy.PreparedServer} is the server made
 * ready once per build ({@link eaveside.deploy.Preparation}), {@link eaveside.deploy.DataFolder} is what a company
 * owns, {@link eaveside.deploy.PostgresServer} and {@link eaveside.deploy.WebServer} are the two servers.
 */
@NullMarked
package eaveside.deploy;

import org.jspecify.annotations.NullMarked;

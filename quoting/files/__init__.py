"""Files to tables and tables to files, whatever they hold."""

"""The sheet to fill in when it is made: hours, yarn and money, as they really were."""

"""The messaging account against a stand-in for the network: real library, real HTTP, real database, no internet."""

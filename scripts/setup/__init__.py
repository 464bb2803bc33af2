"""What must be there before anything is built or tested, and how it comes."""

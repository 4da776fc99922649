"""The sheet of yarn: what each colour takes, what is bought for it, what a stitch of it takes."""

-- A photo that was sent stays: no use case takes one back.
revoke delete on photo, photo_image from eaveside_app;
